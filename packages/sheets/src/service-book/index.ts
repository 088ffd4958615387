export type { ServiceBookOptions, ServiceUnit, UnitAlternate } from "./options.ts";
export { composeServiceBook } from "./service-book.ts";
