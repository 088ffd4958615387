import type { ShopRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import type { Machine } from "../model/index.ts";
import { judgeSample } from "./first-article.ts";

/** How far the first articles of a part's present revision are. */
export interface SampleState {
  /** `none`: no sample of this revision was asked for. */
  readonly state: "none" | ShopRow<"samples">["state"];
  /** The part's present revision. */
  readonly revision: string;
  /** The sample that says so: the last one of this revision; null: none. */
  readonly sampleId: string | null;
  /** How that one was made: `laser-cut plastic`, `final metal`. */
  readonly made: string;
}

/** What keeps the lot of a part from being ordered. */
export type LotBlock =
  /** The part has marked dimensions, and nothing was ever sampled. */
  | "no-sample"
  /** Only another revision was sampled. */
  | "other-revision"
  /** The last sample has not come, or nobody has decided on it. */
  | "asked"
  | "received"
  | "sent-back"
  /** It is approved, although a reading lies outside its limits. */
  | "fails";

const firstDay = ({ asked, received, decided }: ShopRow<"samples">): string => asked || received || decided;

/** Samples in the order in which they were asked for; one without a day comes first, ties go by id. */
const inOrder = (samples: readonly ShopRow<"samples">[]): readonly ShopRow<"samples">[] =>
  [...samples].sort((a, b) => compareText(firstDay(a), firstDay(b)) || compareText(a.id, b.id));

/** Every sample of a part, over all its revisions and the ways in which it was made, first first. */
export const samplesOf = (machine: Machine, partId: string): readonly ShopRow<"samples">[] =>
  inOrder(machine.shop.tables.samples.filter((sample) => sample.part === partId));

/**
 * How far the first articles of a part are: the last sample of its present revision decides, so that an approved one
 * of laser-cut plastic no longer counts once the final metal is asked for.
 * @param supplierId only samples of this supplier; absent: of anyone
 */
export function sampleState(machine: Machine, partId: string, supplierId?: string): SampleState {
  const revision = machine.book.tables.parts.find((part) => part.id === partId)?.revision ?? "";
  const own = samplesOf(machine, partId).filter(
    (sample) => sample.revision === revision && (supplierId === undefined || sample.supplier === supplierId),
  );
  const last = own[own.length - 1];
  return {
    state: last?.state ?? "none",
    revision,
    sampleId: last?.id ?? null,
    made: last?.made ?? "",
  };
}

/**
 * What keeps the lot of a part from being ordered; null when nothing does. A part without marked dimensions and
 * without a sample needs none.
 */
export function lotBlock(machine: Machine, partId: string): LotBlock | null {
  const { state, sampleId } = sampleState(machine, partId);
  if (state === "none") {
    if (machine.shop.tables.samples.some((sample) => sample.part === partId)) return "other-revision";
    return machine.book.tables.dimensions.some((row) => row.part === partId) ? "no-sample" : null;
  }
  if (state !== "approved") return state;
  return sampleId !== null && judgeSample(machine, sampleId)?.verdict === "fail" ? "fails" : null;
}
