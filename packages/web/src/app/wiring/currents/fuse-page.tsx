import { Button } from "@mantine/core";
import { IconMapPin } from "@tabler/icons-react";
import { Link } from "wouter";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { useDesk, useView } from "../../book/desk.tsx";
import { addressOf } from "../../book/place-of.ts";
import { usePick, useWords } from "../../words.tsx";
import { WiringLink } from "../links.tsx";
import { Fact } from "../net-detail.tsx";
import { fuseSteps } from "./calc.ts";
import { CalcTable } from "./calc-table.tsx";
import { a2sText, ampsText, figure, secondsText } from "./figures.ts";
import { FuseCurve } from "./fuse-curve.tsx";
import { ShareMark } from "./share-mark.tsx";
import { Back } from "./supply-page.tsx";
import { useCurrents } from "./use-currents.ts";

type Fuse = ViewEntry<"electricFuse">;

/** One fuse: its curve with everything that is held against it, drawn and as tables. */
export function FusePage({ id }: { readonly id: string }) {
  const { electric: words, wiring, common } = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  const address = useCurrents();
  const found = useView("electricFuse", id);
  const fuse = found?.get("");
  if (found === null) return <p className="dim">{common.loading}</p>;
  if (fuse === undefined) return <p>{wiring.unknown(id)}</p>;
  const { rating, share, itemId } = fuse;
  return (
    <article>
      <Back tab="fuses" />
      <header className="detail-head">
        <h2>{pick(fuse.label.en, fuse.label.zh) || fuse.id}</h2>
        <span className="dim">{rating.fuseId ?? fuse.id}</span>
        <ShareMark share={share} />
        <span style={{ flex: 1 }} />
        {itemId !== null && (
          <Button
            component={Link}
            variant="default"
            href={addressOf(bookId, { kind: "item", id: itemId })}
            leftSection={<IconMapPin size={18} />}
          >
            {words.onLayout}
          </Button>
        )}
      </header>
      <dl className="facts">
        <Fact term={words.col.rated} text={ampsText(rating.ratedA)} />
        <Fact term={words.col.speed} text={words.fuse.speeds[rating.speed]} />
        <Fact term={words.col.rms} text={ampsText(rating.rmsA)} />
        <Fact term={words.col.peak} text={ampsText(rating.peakA)} />
        <Fact term={words.fuse.breaks} text={ampsText(rating.breaksA)} />
        {rating.breakingA !== null && (
          <Fact term={words.fuse.breaking} text={words.fuse.upTo(ampsText(rating.breakingA))} />
        )}
      </dl>
      <p>
        {words.col.supply}: <Link href={address("supplies", rating.supplyId)}>{rating.supplyId}</Link>
      </p>
      <details className="moment">
        <summary>
          {words.fuse.behind}: {words.ladder.loads(fuse.loads.length)}
        </summary>
        <ul>
          {fuse.loads.map((load) => (
            <li key={load.id}>
              <Link href={addressOf(bookId, { kind: "item", id: load.itemId ?? load.id })}>
                {pick(load.label.en, load.label.zh) || load.id}
              </Link>
            </li>
          ))}
        </ul>
      </details>
      <h3>{words.fuse.curve}</h3>
      <p className="dim">{words.fuse.curveHint}</p>
      <div className="fuse-figures">
        <FuseCurve fuse={fuse} />
        <div>
          <Gates fuse={fuse} />
          <FarAndWire fuse={fuse} />
        </div>
      </div>
      <PulseTable fuse={fuse} />
      <CalcTable caption={words.computation} steps={fuseSteps(words, rating)} />
    </article>
  );
}

function Gates({ fuse: { chart, rating } }: { readonly fuse: Fuse }) {
  const { fuse: words } = useWords().electric;
  const rows =
    chart.gates.length > 0
      ? chart.gates
      : chart.latest.map(([amps, seconds]) => ({
          multiple: amps / rating.ratedA,
          leastS: null,
          mostS: seconds,
        }));
  return (
    <div className="plain-scroll">
      <table className="plain">
        <caption>
          {words.gates} <small>{words.gatesHint}</small>
        </caption>
        <thead>
          <tr>
            <th scope="col" className="end">
              {words.multiple}
            </th>
            <th scope="col" className="end">
              {words.current}
            </th>
            <th scope="col" className="end">
              {words.earliest}
            </th>
            <th scope="col" className="end">
              {words.latest}
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ multiple, leastS, mostS }) => (
            <tr key={multiple}>
              <td className="end">{figure(multiple)}</td>
              <td className="end">{ampsText(multiple * rating.ratedA)}</td>
              <td className="end">{leastS === null ? words.anyTime : secondsText(leastS)}</td>
              <td className="end">{mostS === null ? words.endless : secondsText(mostS)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function FarAndWire({ fuse: { rating, weakest } }: { readonly fuse: Fuse }) {
  const { electric } = useWords();
  const { fuse: words } = electric;
  const { far } = rating;
  return (
    <dl className="length-sum">
      {far !== null && (
        <Fact
          term={`${words.short}, ${ampsText(far.heldA)}`}
          text={Number.isFinite(far.opensS) ? words.shortOpens(secondsText(far.opensS)) : words.shortNever}
        />
      )}
      {rating.weakest !== null && weakest !== null && (
        <div>
          <dt>
            {words.wire} <WiringLink id={rating.weakest.wireId} text={weakest} />, k²S² ={" "}
            {a2sText(rating.weakest.adiabaticA2s)}
          </dt>
          <dd>
            <ShareMark share={rating.weakest.used} />
          </dd>
        </div>
      )}
    </dl>
  );
}

function PulseTable({ fuse: { chart, loads } }: { readonly fuse: Fuse }) {
  const { electric } = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  const { fuse: words, col } = electric;
  const named = new Map(loads.map((load) => [load.id, load]));
  if (chart.pulses.length === 0) return <p className="dim">{words.noPulses}</p>;
  return (
    <div className="plain-scroll">
      <table className="plain">
        <caption>{words.pulses}</caption>
        <thead>
          <tr>
            <th scope="col">{col.load}</th>
            <th scope="col" className="end">
              {words.current}
            </th>
            <th scope="col" className="end">
              {words.length}
            </th>
            <th scope="col" className="end">
              {words.count}
            </th>
            <th scope="col" className="end">
              {words.pulseA2s}
            </th>
          </tr>
        </thead>
        <tbody>
          {chart.pulses.map(({ loadId, amps, seconds, aMinute }) => {
            const load = named.get(loadId);
            const text = (load === undefined ? "" : pick(load.label.en, load.label.zh)) || loadId;
            return (
              <tr key={loadId}>
                <th scope="row">
                  {load?.itemId == null ? (
                    text
                  ) : (
                    <Link href={addressOf(bookId, { kind: "item", id: load.itemId })}>{text}</Link>
                  )}
                </th>
                <td className="end">{ampsText(amps)}</td>
                <td className="end">{secondsText(seconds)}</td>
                <td className="end">{figure(aMinute)} / min</td>
                <td className="end">{a2sText(amps ** 2 * seconds)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
