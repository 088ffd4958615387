import { type ControlStudy, ENOUGH_READINGS } from "@pinwright/engine";
import type { Estimate, SpecificationLimits } from "@pinwright/kernel";
import { useWords } from "../../words.tsx";
import { figureText } from "./figure-text.ts";

/** What keeps the figures from being believed, before they are read. */
export function Doubts({ study }: { readonly study: ControlStudy }) {
  const own = useWords().benchQuality.charts;
  if (study.doubts.length === 0) return null;
  return (
    <ul className="study-doubts">
      {study.doubts.map((doubt) => (
        <li key={doubt} className="amber-text">
          {doubt === "few" ? own.doubts.few(study.summary.count, ENOUGH_READINGS) : own.doubts[doubt]}
        </li>
      ))}
    </ul>
  );
}

export function StudyFigures({
  study,
  unit,
  limits,
}: {
  readonly study: ControlStudy;
  readonly unit: string;
  readonly limits: SpecificationLimits;
}) {
  const own = useWords().benchQuality.charts;
  const { count, mean, deviation } = study.summary;
  const measured = (value: number) => (
    <td className="end" title={String(value)}>
      {figureText(value, deviation)} {unit}
    </td>
  );
  const limit = (value: number | null) => (
    <td className="end">{value === null ? own.figure.noLimit : `${value} ${unit}`}</td>
  );
  return (
    <table className="plain">
      <caption>{own.figures}</caption>
      <tbody>
        <tr>
          <th scope="row">{own.figure.count}</th>
          <td className="end">{count}</td>
        </tr>
        <tr>
          <th scope="row">{own.figure.mean}</th>
          {measured(mean)}
        </tr>
        <tr>
          <th scope="row">{own.figure.within}</th>
          {measured(study.deviationWithin)}
        </tr>
        <tr>
          <th scope="row">{own.figure.overall}</th>
          {measured(deviation)}
        </tr>
        <tr>
          <th scope="row">{own.figure.lower}</th>
          {limit(limits.lower)}
        </tr>
        <tr>
          <th scope="row">{own.figure.upper}</th>
          {limit(limits.upper)}
        </tr>
        {study.normalChance !== null && (
          <tr>
            <th scope="row">{own.figure.normal}</th>
            <td className="end" title={String(study.normalChance)}>
              {study.normalChance < 0.001 ? "< 0.1 %" : `${(100 * study.normalChance).toFixed(1)} %`}
            </td>
          </tr>
        )}
      </tbody>
    </table>
  );
}

/** Cp, Cpk, Pp and Ppk with their intervals and the count. */
export function CapabilityTable({
  study,
  limits,
}: {
  readonly study: ControlStudy;
  readonly limits: SpecificationLimits;
}) {
  const { benchQuality } = useWords();
  const own = benchQuality.charts;
  if (limits.lower === null && limits.upper === null) return <p>{own.noLimits}</p>;
  const { within, overall } = study;
  if (within === null || overall === null) return <p>{own.noSpread}</p>;
  const rows: readonly (readonly [string, Estimate | null])[] = [
    ["Cp", within.cp],
    ["Cpk", within.cpk],
    ["Pp", overall.cp],
    ["Ppk", overall.cpk],
  ];
  const doubtful = study.doubts.length > 0;
  return (
    <table className="plain">
      <caption>
        {own.capability}
        <small>{own.capabilityAbout}</small>
      </caption>
      <thead>
        <tr>
          <th scope="col">{own.capability}</th>
          <th scope="col" className="end">
            {own.figures}
          </th>
          <th scope="col" className="end">
            {benchQuality.yields.interval}
          </th>
          <th scope="col" className="end">
            {own.figure.count}
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, estimate]) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            {estimate === null ? (
              <td className="dim" colSpan={3}>
                {own.oneLimit}
              </td>
            ) : (
              <>
                <td className={doubtful ? "end amber-text" : "end"} title={String(estimate.value)}>
                  {doubtful && "? "}
                  {estimate.value.toFixed(2)}
                </td>
                <td className="end">
                  {benchQuality.between(estimate.low.toFixed(2), estimate.high.toFixed(2))}
                </td>
                <td className="end">n = {study.summary.count}</td>
              </>
            )}
          </tr>
        ))}
        <tr title={own.outsideAbout}>
          <th scope="row">{own.outside}</th>
          <td className="end">{shareText(overall.outside)}</td>
          <td colSpan={2} />
        </tr>
      </tbody>
    </table>
  );
}

/** A small share in parts of a million, a larger one in percent. */
const shareText = (share: number): string =>
  share < 0.0001 ? `${(1e6 * share).toFixed(share < 1e-6 ? 2 : 0)} ppm` : `${(100 * share).toFixed(2)} %`;
