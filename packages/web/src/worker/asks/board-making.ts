import { type BoardKit, boardKit, type SolderWay, type StuffingPlan, stuffingPlan } from "@pinwright/engine";
import type { Model } from "../model.ts";

const isKind = ({ book }: Model, typeId: string): boolean =>
  book.tables.placements.some((row) => row.board_type === typeId);

/** In which order the parts of a kind of board go in; null: it has no parts. */
export const boardStuffing = (
  model: Model,
  { typeId, benches, way }: { readonly typeId: string; readonly benches: number; readonly way: SolderWay },
): StuffingPlan | null =>
  isKind(model, typeId) ? stuffingPlan(model.line.machine, typeId, benches, way) : null;

/** What is laid out for a batch of boards of one kind; null: it has no parts. */
export const boardKitFor = (
  model: Model,
  { typeId, boards }: { readonly typeId: string; readonly boards: number },
): BoardKit | null => (isKind(model, typeId) ? boardKit(model.line.machine, typeId, boards) : null);
