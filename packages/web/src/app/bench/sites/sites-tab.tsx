import { Link } from "wouter";
import { call } from "../../../api/call.ts";
import { useDesk, useView } from "../../book/desk.tsx";
import { TableScroll } from "../../parts/table-scroll.tsx";
import { useWords } from "../../words.tsx";
import { unitAddress } from "../address.ts";
import { dayStart } from "../defects/span.ts";
import { useFloorText } from "../floor/use-floor-text.ts";
import { useNames, useWhen } from "../names.tsx";
import { TransportSheet } from "../sheets/unit-sheets.tsx";
import { useAsked } from "../use-asked.ts";
import {
  type SiteRow,
  type StageAtSites,
  type StageWork,
  siteRows,
  type Transport,
  transportsOf,
  workOfSite,
} from "./site-rows.ts";
import "../defects/defects.css";
import "./sites.css";

/** What is where, what is on the way, and what waits at each site. */
export default function SitesTab() {
  const { benchFloor, common } = useWords();
  const own = benchFloor.sites;
  const { bookId } = useDesk();
  const names = useNames();
  const sites = useView("floorSites", null);
  const stages = useView("siteStages", null);
  const since = dayStart(Date.now()).toISOString();
  const { answer, failed, again } = useAsked(`floor ${bookId} ${since}`, (signal) =>
    call("floorNow", { parts: {}, query: { book: bookId, since }, signal }),
  );
  const siteIds = [...(sites?.keys() ?? [])];
  const stageRows = [...(stages?.values() ?? [])];
  const rows = answer === undefined ? [] : siteRows(answer.units, siteIds, stageRows);
  return (
    <div className="currents-body sites">
      <h2>{own.title}</h2>
      <p>{own.about}</p>
      {failed !== "" && (
        <p className="error-text" role="alert">
          {failed}{" "}
          <button type="button" className="link-button" onClick={again}>
            {common.retry}
          </button>
        </p>
      )}
      {sites !== null && sites.size === 0 && <p>{own.noSites}</p>}
      {answer !== undefined && (
        <>
          {answer.units.length === 0 ? <p>{own.none}</p> : <Matrix rows={rows} stages={stageRows} />}
          <h3>{own.way}</h3>
          <OnTheWay transports={transportsOf(answer.units, answer.countedIn)} />
          {siteIds.map((site) => (
            <section key={site} aria-label={own.own(names.site(site))}>
              <h3>{own.own(names.site(site))}</h3>
              <Work work={workOfSite(answer.units, site, stageRows)} />
            </section>
          ))}
        </>
      )}
    </div>
  );
}

/** Units by site and stage. */
function Matrix({
  rows,
  stages,
}: {
  readonly rows: readonly SiteRow[];
  readonly stages: readonly StageAtSites[];
}) {
  const { benchFloor } = useWords();
  const own = benchFloor.sites;
  const names = useNames();
  const text = useFloorText();
  const when = useWhen();
  const used = new Set(rows.flatMap(({ byStage }) => [...byStage.keys()]));
  const order = stages.map(({ id }) => id);
  const columns = [
    "",
    ...order,
    ...[...used].filter((stage) => stage !== "" && !order.includes(stage)),
  ].filter((stage) => used.has(stage));
  return (
    <TableScroll>
      <table className="plain">
        <caption>{own.matrix}</caption>
        <thead>
          <tr>
            <th scope="col">{own.site}</th>
            {columns.map((stage) => (
              <th key={stage} scope="col" className="end site-stage">
                {text.stage(stage)}
              </th>
            ))}
            <th scope="col" className="end">
              {own.all}
            </th>
            <th scope="col" className="end">
              {own.coming}
            </th>
            <th scope="col">{own.last}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ site, units, byStage, coming, lastAt }) => (
            <tr key={site}>
              <th scope="row">{site === "" ? own.unknown : names.site(site)}</th>
              {columns.map((stage) => (
                <td key={stage} className="end">
                  {byStage.get(stage) ?? ""}
                </td>
              ))}
              <td className="end">
                <b>{units}</b>
              </td>
              <td className="end">{coming === 0 ? "" : coming}</td>
              <td className="dim">{lastAt === "" ? own.never : when(lastAt)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableScroll>
  );
}

function OnTheWay({ transports }: { readonly transports: readonly Transport[] }) {
  const { benchFloor } = useWords();
  const own = benchFloor.sites;
  if (transports.length === 0) return <p>{own.noWay}</p>;
  return transports.map((transport) => <OneTransport key={transport.transport} transport={transport} />);
}

/** A transport with what is on it: still on the way, missing, or counted in. */
function OneTransport({
  transport: { transport, to, since, out, countedIn },
}: {
  readonly transport: Transport;
}) {
  const { benchFloor } = useWords();
  const own = benchFloor.sites;
  const { bookId } = useDesk();
  const names = useNames();
  const text = useFloorText();
  const when = useWhen();
  const isMissing = countedIn.length > 0;
  const lines = [
    ...out.map(
      ({ unit, what, type }) => ({ unit, what, type, state: isMissing ? "missing" : "way" }) as const,
    ),
    ...countedIn.map(({ unit, what, type }) => ({ unit, what, type, state: "in" }) as const),
  ];
  return (
    <details className="transport" open={isMissing}>
      <summary>
        <b>{own.transport(transport)}</b> {own.to(names.site(to))} ·{" "}
        {own.sentAt(when(since), text.ago(since, Date.now()))} · {own.unitsOn(out.length, countedIn.length)}
        {isMissing && <span className="amber-text"> {own.missing(out.length)}</span>}
      </summary>
      <TransportSheet book={bookId} transport={transport} />
      <table className="plain">
        <caption className="visually-hidden">{own.list}</caption>
        <thead>
          <tr>
            <th scope="col">{own.unit}</th>
            <th scope="col">{own.type}</th>
            <th scope="col">{own.state}</th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ unit, what, type, state }) => (
            <tr key={unit}>
              <th scope="row">
                <Link href={unitAddress(bookId, unit)}>{unit}</Link>
              </th>
              <td>{names.type(what, type)}</td>
              <td className={state === "missing" ? "amber-text" : undefined}>{own.states[state]}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

/** Units that are named of a stage; more are only counted. */
const MOST_NAMED = 12;

/** Work of a site: what waits for each of its stages, and what is coming to it. */
function Work({ work }: { readonly work: readonly StageWork[] }) {
  const { benchFloor } = useWords();
  const own = benchFloor.sites;
  const { bookId } = useDesk();
  const text = useFloorText();
  if (work.length === 0) return <p>{own.noStages}</p>;
  return (
    <TableScroll>
      <table className="plain">
        <thead>
          <tr>
            <th scope="col">{benchFloor.stage}</th>
            <th scope="col">{own.waits}</th>
            <th scope="col" className="end">
              {own.coming}
            </th>
          </tr>
        </thead>
        <tbody>
          {work.map(({ stage, waiting, coming }) => (
            <tr key={stage}>
              <th scope="row">{text.stage(stage)}</th>
              <td>
                {waiting.length === 0 ? (
                  <span className="dim">{own.nothing}</span>
                ) : (
                  <>
                    <b>{waiting.length}</b>{" "}
                    {waiting.slice(0, MOST_NAMED).map(({ unit }) => (
                      <Link key={unit} className="site-unit" href={unitAddress(bookId, unit)}>
                        {unit}
                      </Link>
                    ))}
                    {waiting.length > MOST_NAMED && (
                      <span className="dim">{benchFloor.others(waiting.length - MOST_NAMED)}</span>
                    )}
                  </>
                )}
              </td>
              <td className="end">{coming === 0 ? "" : coming}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableScroll>
  );
}
