import type { Plan } from "./run-tab.ts";

type Need = Pick<
  Plan["needs"][number],
  | "partId"
  | "colour"
  | "gross"
  | "build"
  | "scrap"
  | "spares"
  | "fromStock"
  | "fromOrders"
  | "net"
  | "neededDay"
  | "stageId"
>;

/** What a run needs of one part in one colour, with the stages that it is made of. */
export interface NeedRow extends Omit<Need, "stageId"> {
  readonly key: string;
  readonly stages: readonly Need[];
}

/** Needs of all stages and spares added up by part and colour, in the order of the plan; needed as early as the first. */
export function needRows(needs: readonly Need[]): readonly NeedRow[] {
  const groups = new Map<string, Need[]>();
  for (const need of needs) {
    const key = `${need.partId} ${need.colour}`.trim();
    const own = groups.get(key);
    if (own === undefined) groups.set(key, [need]);
    else own.push(need);
  }
  return [...groups].map(([key, stages]) => {
    const sum = (of: (need: Need) => bigint): bigint => stages.reduce((total, need) => total + of(need), 0n);
    return {
      key,
      partId: stages[0]?.partId ?? "",
      colour: stages[0]?.colour ?? "",
      gross: sum((need) => need.gross),
      build: sum((need) => need.build),
      scrap: sum((need) => need.scrap),
      spares: sum((need) => need.spares),
      fromStock: sum((need) => need.fromStock),
      fromOrders: sum((need) => need.fromOrders),
      net: sum((need) => need.net),
      neededDay: Math.min(...stages.map(({ neededDay }) => neededDay)),
      stages,
    };
  });
}
