import type { Model } from "../model.ts";
import { faults } from "./faults.ts";
import { summary } from "./summary.ts";
import type { View } from "./view.ts";

/** Every view by its name. */
export const VIEWS = { summary, faults };

export type ViewName = keyof typeof VIEWS;
export type ViewParam<N extends ViewName> = (typeof VIEWS)[N] extends View<infer P, infer _> ? P : never;
export type ViewEntry<N extends ViewName> = (typeof VIEWS)[N] extends View<infer _, infer E> ? E : never;

/** A view whose types are not known where it is used: the worker's own round over what is watched. */
export interface AnyView {
  uses(model: Model, param: unknown): readonly unknown[];
  entries(model: Model, param: unknown): ReadonlyMap<string, unknown>;
  readonly restsInPreview?: boolean;
}
