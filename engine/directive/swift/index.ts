export { swiftAbsent } from './absent.ts';
export { type SwiftRules, swiftRules } from './compile.ts';
export { type NeedsWhole, type SwiftLines, swiftLines, whySwiftlyNot } from './lines.ts';
