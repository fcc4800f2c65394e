export * from './forms.ts';
export * from './model.ts';
