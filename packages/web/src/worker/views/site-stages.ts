import { view } from "./view.ts";

/** A stage of the shop with the sites at which it has benches. */
export interface SiteStage {
  readonly id: string;
  readonly kind: string;
  readonly sites: readonly string[];
}

/** Kinds of benches that are called otherwise than the stages at which they are used, as runs are planned. */
const BENCH_KINDS: Readonly<Record<string, string>> = {
  panels: "panel",
  boards: "board",
  mechanisms: "assembly",
};

/** Stages of the shop, in its order, with where they are worked: at their own benches, else at all of their kind. */
export const siteStages = view<null, SiteStage>({
  early: true,
  uses: ({ shop }) => [shop.tables.stages, shop.tables.benches],
  entries: ({ shop: { tables } }) =>
    new Map(
      tables.stages.map(({ id, kind, benches }) => {
        const own = tables.benches.filter((bench) =>
          benches.length > 0 ? benches.includes(bench.id) : bench.kind === (BENCH_KINDS[kind] ?? kind),
        );
        return [id, { id, kind, sites: [...new Set(own.flatMap(({ site }) => site ?? []))] }];
      }),
    ),
  restsInPreview: true,
});
