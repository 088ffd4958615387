import { Button } from "@mantine/core";
import { IconBulb } from "@tabler/icons-react";
import { useState } from "react";
import { Link, useLocation } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useView } from "../book/desk.tsx";
import { addressOf } from "../book/place-of.ts";
import { usePick, useWords } from "../words.tsx";
import { type Conductor, ConductorDetail, ConductorTable } from "./currents/conductors-tab.tsx";
import { ShareMark } from "./currents/share-mark.tsx";
import { EntrySideNote, HousingTitle, HousingView } from "./housing-view.tsx";
import { EndText, HarnessLink, WiringLink } from "./links.tsx";
import { Fact } from "./net-detail.tsx";
import { mmText } from "./number-text.ts";
import { WireColour } from "./wire-colour.tsx";

type Way = ViewEntry<"wire">;

/** One wire: from where to where, along which lanes, and what its length is made of. */
export function WireDetail({ id }: { readonly id: string }) {
  const { wiring: words, common } = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  const wire = useView("wire", id)?.get("");
  const conductors = useView("electricConductors", { of: "wire", id });
  if (wire === undefined) return <p className="dim">{common.loading}</p>;
  return (
    <article>
      <header className="detail-head">
        <h2>
          {words.wire} {wire.printed}
        </h2>
        <WireColour code={wire.colour} />
        <span>{wire.gauge}</span>
        {conductors !== null && <ShareMark share={conductors.get(wire.id)?.share ?? null} />}
        <span style={{ flex: 1 }} />
        <Button
          component={Link}
          href={addressOf(bookId, { kind: "item", id: wire.id })}
          leftSection={<IconBulb size={18} />}
        >
          {words.onLayout}
        </Button>
      </header>
      <p>
        {words.net} <WiringLink id={wire.netId} />{" "}
        <span className="dim">{pick(wire.net.en, wire.net.zh)}</span> · {words.harness}{" "}
        <HarnessLink harness={wire.harness} />
        {wire.cableId !== null && <> · {words.cable(wire.cableId)}</>}
      </p>
      <WayEnds wire={wire} />
      <h3>{words.way}</h3>
      <p className="dim">{words.wayHint}</p>
      <WayTable wire={wire} />
      <h3>{words.sum}</h3>
      <LengthSum wire={wire} />
      <p>{words.crimpedFirst[wire.crimpedFirst](wire.a.id, wire.b.id)}</p>
      <WireCurrents id={wire.id} conductors={[...(conductors?.values() ?? [])]} />
      <EndHousings wire={wire} />
    </article>
  );
}

/** What the wire and the contacts at its ends carry, each against its limit. */
function WireCurrents({
  id,
  conductors,
}: {
  readonly id: string;
  readonly conductors: readonly Conductor[];
}) {
  const { electric: words } = useWords();
  const own = conductors.find((one) => one.id === id);
  if (own === undefined) return null;
  const contacts = conductors.filter((one) => one.kind === "contact");
  return (
    <section>
      <h3>
        {words.title} <ShareMark share={own.share} />
      </h3>
      <ConductorDetail one={own} />
      {contacts.length > 0 && <ConductorTable caption={words.onlyContacts} rows={contacts} />}
    </section>
  );
}

function WayEnds({ wire }: { readonly wire: Way }) {
  const words = useWords().wiring;
  return (
    <div className="wire-ends">
      <div>
        <span className="dim">{words.from}</span>
        <EndText end={wire.a} />
      </div>
      <span aria-hidden="true">→</span>
      <div>
        <span className="dim">{words.to}</span>
        <EndText end={wire.b} />
      </div>
    </div>
  );
}

/** A figure, or a dash where there is nothing of that kind. */
const part = (mm: number): string => (mm === 0 ? "–" : mmText(mm));

function WayTable({ wire }: { readonly wire: Way }) {
  const words = useWords().wiring;
  const { bookId } = useDesk();
  return (
    <div className="plain-scroll">
      <table className="plain">
        <thead>
          <tr>
            <th scope="col">{words.stretch}</th>
            <th scope="col" className="end">
              {words.asItLies}
            </th>
            <th scope="col" className="end">
              {words.dressing}
            </th>
            <th scope="col" className="end">
              {words.serviceLoop}
            </th>
            <th scope="col" className="end">
              {words.rounding}
            </th>
            <th scope="col" className="end">
              {words.length}
            </th>
            <th scope="col" className="end">
              {words.together}
            </th>
          </tr>
        </thead>
        <tbody>
          {wire.steps.map((step) => (
            <tr key={step.branchId}>
              <td>
                <span className="dim">{words.stretches[step.kind]}</span>{" "}
                {step.kind === "tail" ? (
                  <WiringLink id={step.name} />
                ) : (
                  <Link href={addressOf(bookId, { kind: "lane", id: step.name })}>{step.name}</Link>
                )}
              </td>
              <td className="end">{mmText(step.routeMm)}</td>
              <td className="end">{part(step.dressingMm)}</td>
              <td className="end">{part(step.serviceLoopMm)}</td>
              <td className="end">{part(step.roundingMm)}</td>
              <td className="end">
                <b>{mmText(step.lengthMm)}</b>
              </td>
              <td className="end">{words.wires(step.together - 1)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function LengthSum({ wire }: { readonly wire: Way }) {
  const words = useWords().wiring;
  return (
    <dl className="length-sum">
      <Fact
        term={`${words.finished} (${words.tolerance(mmText(wire.tolerancePlusMm))})`}
        text={`${mmText(wire.finishedMm)} mm`}
      />
      <Fact term={words.stripEnd(wire.a.id)} text={`+ ${mmText(wire.stripAMm)} mm`} />
      <Fact term={words.stripEnd(wire.b.id)} text={`+ ${mmText(wire.stripBMm)} mm`} />
      <Fact term={words.trim} text={`+ ${mmText(wire.trimMm)} mm`} />
      <Fact term={words.cutRounding} text={`+ ${mmText(wire.cutRoundingMm)} mm`} />
      <Fact term={words.cut} text={`= ${mmText(wire.cutMm)} mm`} />
    </dl>
  );
}

/** The housings at both ends, with this wire lit up. */
function EndHousings({ wire }: { readonly wire: Way }) {
  return [wire.a, wire.b].map((end) =>
    end.landingId === null ? null : <EndHousing key={end.id} landingId={end.landingId} wireId={wire.id} />,
  );
}

function EndHousing({ landingId, wireId }: { readonly landingId: string; readonly wireId: string }) {
  const [, go] = useLocation();
  const { bookId } = useDesk();
  const [over, setOver] = useState<string | null>(null);
  const housing = useView("housings", { of: "landing", id: landingId })?.get(landingId);
  if (housing === undefined) return null;
  return (
    <section className="landing">
      <HousingTitle housing={housing} />
      <EntrySideNote housings={[housing]} />
      <HousingView
        housing={housing}
        lit={{ pointId: null, wireId: over ?? wireId }}
        onPoint={(cavity) =>
          go(addressOf(bookId, { kind: "wire", id: cavity.wires[0]?.id ?? cavity.pointId }))
        }
        onHover={setOver}
      />
    </section>
  );
}
