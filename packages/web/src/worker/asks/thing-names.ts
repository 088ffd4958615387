import type { NamedThing } from "@pinwright/engine";
import type { Model } from "../model.ts";
import { thingsOf } from "../views/thing.ts";

/** What ids are called: the id itself where the book has nothing of this name. */
export const thingNames = ({ line }: Model, ids: readonly string[]): readonly NamedThing[] =>
  ids.map((id) => thingsOf(line).named(id));
