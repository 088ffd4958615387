/** placeholder */
export type SheetRule = Readonly<Record<string, never>>;
export const todo: SheetRule = {};
