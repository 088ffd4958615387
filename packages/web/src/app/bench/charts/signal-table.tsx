import type { ControlStudy } from "@pinwright/engine";
import type { ControlRule } from "@pinwright/kernel";
import { TableScroll } from "../../parts/table-scroll.tsx";
import { useWords } from "../../words.tsx";

/** Places that are named of one rule; more are only counted. */
const MOST_PLACES = 12;

/** Which rules are broken, and at which units. */
export function SignalTable({
  study,
  valueUnits,
  rangeUnits,
}: {
  readonly study: ControlStudy;
  readonly valueUnits: (at: number) => string;
  readonly rangeUnits: (at: number) => string;
}) {
  const own = useWords().benchQuality.charts;
  const byRule = new Map<ControlRule, string[]>();
  for (const { rule, at } of study.values.signals)
    byRule.set(rule, [...(byRule.get(rule) ?? []), valueUnits(at)]);
  const rows = [
    ...[...byRule].map(([rule, places]) => ({ key: rule, name: own.rules[rule], places })),
    ...(study.spreads.signals.length === 0
      ? []
      : [
          {
            key: "ranges",
            name: own.onRanges,
            places: study.spreads.signals.map(({ at }) => rangeUnits(at)),
          },
        ]),
  ];
  if (rows.length === 0) return <p>{own.noSignals}</p>;
  return (
    <TableScroll>
      <table className="plain">
        <caption>
          {own.signals}
          <small>{own.rulesFrom}</small>
        </caption>
        <thead>
          <tr>
            <th scope="col">{own.rule}</th>
            <th scope="col">{own.ruleAt}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, name, places }) => (
            <tr key={key}>
              <th scope="row">{name}</th>
              <td>
                {places.slice(0, MOST_PLACES).join(", ")}
                {places.length > MOST_PLACES && (
                  <span className="dim"> {own.rest(places.length - MOST_PLACES)}</span>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableScroll>
  );
}
