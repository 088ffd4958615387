import { IconAlertTriangle, IconCheck, IconMinus, IconX } from "@tabler/icons-react";
import { Link, useSearchParams } from "wouter";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { DrawingScroll } from "../wiring/currents/drawing-scroll.tsx";
import { usePick, useWords } from "../words.tsx";
import { fitAddress, sizeAddress } from "./address.ts";
import { FitChart } from "./fit-chart.tsx";
import { type Fit, type FitVerdict, spreadOf, verdictOf } from "./fit-rows.ts";

const VERDICT_ICONS: Readonly<Record<FitVerdict, typeof IconCheck>> = {
  good: IconCheck,
  likely: IconAlertTriangle,
  bad: IconX,
  open: IconMinus,
};
const VERDICT_TONES: Readonly<Record<FitVerdict, string>> = {
  good: "",
  likely: "amber-text",
  bad: "error-text",
  open: "dim",
};

/** Gaps and sizes of the box: how they spread, against what is asked for. */
export function FitsTab({
  fits,
  sizes,
}: {
  readonly fits: Entries<"panelFits">;
  readonly sizes: Entries<"panelSizes">;
}) {
  const words = useWords();
  const own = words.panels;
  const { bookId } = useDesk();
  const pick = usePick();
  const [params] = useSearchParams();
  const chosen = fits.get(params.get("id") ?? "") ?? fits.values().next().value;
  const tables = (
    <p className="way-links">
      {(["fits", "fit_terms", "panel_sizes"] as const).map((table) => (
        <Link key={table} href={`/b/${bookId}/tables/${table}`}>
          {words.tableNames.tables[table]}
        </Link>
      ))}
    </p>
  );
  if (chosen === undefined)
    return (
      <>
        <h2>{own.fitsTitle}</h2>
        <p>{own.noFits}</p>
        {tables}
      </>
    );
  return (
    <>
      <h2>{own.fitsTitle}</h2>
      <p className="dim">{own.fitsAbout}</p>
      <div className="fits">
        <ul className="fit-list">
          {[...fits.values()].map((fit) => (
            <li key={fit.fitId}>
              <Link
                href={fitAddress(bookId, fit.fitId)}
                replace
                aria-current={fit.fitId === chosen.fitId ? "true" : undefined}
              >
                <b>{pick(fit.labels.en, fit.labels.zh) || fit.fitId}</b>
                <Verdict fit={fit} />
              </Link>
            </li>
          ))}
        </ul>
        <FitDetail fit={chosen} sizes={sizes} />
      </div>
      {tables}
    </>
  );
}

/** Whether it comes out, in words and with a sign. */
function Verdict({ fit }: { readonly fit: Fit }) {
  const words = useWords().panels;
  const verdict = verdictOf(fit);
  const Icon = VERDICT_ICONS[verdict];
  return (
    <span className={`fit-verdict ${VERDICT_TONES[verdict]}`}>
      <Icon size={16} aria-hidden /> {words.fitVerdicts[verdict]}
    </span>
  );
}

/** One fit: its bars, its figures and what adds up to it. */
function FitDetail({ fit, sizes }: { readonly fit: Fit; readonly sizes: Entries<"panelSizes"> }) {
  const words = useWords().panels;
  const pick = usePick();
  const { bookId } = useDesk();
  const name = pick(fit.labels.en, fit.labels.zh) || fit.fitId;
  const spread = fit.terms.reduce((sum, term) => sum + spreadOf(term), 0);
  const figure = (title: string, text: string) => (
    <div>
      <dt>{title}</dt>
      <dd>
        <b>{text}</b>
      </dd>
    </div>
  );
  const termName = ({ term, panel }: Fit["terms"][number]) => {
    if (panel === null) return term;
    // What is not cut from a sheet has no size of its own here: it is looked at in the drawing.
    const address = sizes.has(panel.id)
      ? sizeAddress(bookId, panel.id)
      : `/b/${bookId}/layout?id=${encodeURIComponent(panel.id)}`;
    return <Link href={address}>{pick(panel.label, panel.labelZh) || panel.id}</Link>;
  };
  return (
    <section aria-label={name}>
      <h3>{name}</h3>
      {fit.reason !== "" && <p>{fit.reason}</p>}
      <p>
        <Verdict fit={fit} />
      </p>
      <FitChart fit={fit} />
      <dl className="plan-figures">
        {figure(words.middle, words.mm2(fit.nominalMm))}
        {figure(words.worst, words.range(fit.worstMinMm, fit.worstMaxMm))}
        {figure(words.rss, words.range(fit.rssMinMm, fit.rssMaxMm))}
        {figure(words.asked, words.limits(fit.minMm, fit.maxMm))}
      </dl>
      <DrawingScroll>
        <table className="plain fit-terms">
          <caption>{words.terms}</caption>
          <thead>
            <tr>
              <th scope="col">{words.term}</th>
              <th scope="col">{words.dimension}</th>
              <th scope="col" className="end">
                {words.times}
              </th>
              <th scope="col" className="end">
                {words.value}, mm
              </th>
              <th scope="col" className="end">
                {words.tolerance}, mm
              </th>
              <th scope="col" className="end">
                {words.share}
              </th>
            </tr>
          </thead>
          <tbody>
            {fit.terms.map((term) => (
              <tr key={term.term}>
                <th scope="row">{termName(term)}</th>
                <td>{words.dimensions[term.dimension]}</td>
                <td className="end">{words.timesOf(term.times)}</td>
                <td className="end">{words.exact(term.valueMm)}</td>
                <td className="end">{words.tolOf(term.minusMm, term.plusMm)}</td>
                <td className="end">{words.sharePct(spread === 0 ? 0 : (100 * spreadOf(term)) / spread)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </DrawingScroll>
    </section>
  );
}
