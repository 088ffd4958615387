import type { Model } from "../model.ts";
import { faults } from "./faults.ts";
import { layoutAbout } from "./layout-about.ts";
import { layoutCutouts } from "./layout-cutouts.ts";
import { layoutEffects } from "./layout-effects.ts";
import { layoutFindings } from "./layout-findings.ts";
import { layoutItems } from "./layout-items.ts";
import { layoutPanels } from "./layout-panels.ts";
import { layoutTails } from "./layout-tails.ts";
import { layoutTrace } from "./layout-trace.ts";
import { layoutCrossings, layoutLanes, layoutWaypoints } from "./layout-ways.ts";
import { summary } from "./summary.ts";
import type { View } from "./view.ts";

/** Every view by its name. */
export const VIEWS = {
  summary,
  faults,
  layoutPanels,
  layoutItems,
  layoutCutouts,
  layoutWaypoints,
  layoutLanes,
  layoutCrossings,
  layoutTails,
  layoutTrace,
  layoutFindings,
  layoutEffects,
  layoutAbout,
};

export type ViewName = keyof typeof VIEWS;
export type ViewParam<N extends ViewName> = (typeof VIEWS)[N] extends View<infer P, infer _> ? P : never;
export type ViewEntry<N extends ViewName> = (typeof VIEWS)[N] extends View<infer _, infer E> ? E : never;

/** A view whose types are not known where it is used: the worker's own round over what is watched. */
export interface AnyView {
  uses(model: Model, param: unknown): readonly unknown[];
  entries(model: Model, param: unknown): ReadonlyMap<string, unknown>;
  readonly restsInPreview?: boolean;
}
