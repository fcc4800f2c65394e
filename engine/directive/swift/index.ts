export { type SwiftRules, swiftRules } from './compile.ts';
export { type NeedsWhole, type SwiftLines, swiftLines } from './lines.ts';
