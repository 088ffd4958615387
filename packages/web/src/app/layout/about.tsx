import { Button } from "@mantine/core";
import { findingWords } from "@pinwright/words";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { addressOf } from "../book/place-of.ts";
import { thingAddress } from "../service/address.ts";
import { usePick, useSpeech, useWords } from "../words.tsx";

type About = ViewEntry<"layoutAbout">;

/** Type, size, and what it belongs together with. */
export function Facts({
  about,
  select,
}: {
  readonly about: About;
  readonly select: (ids: readonly string[]) => void;
}) {
  const words = useWords();
  const pick = usePick();
  const own = words.layout.chosen;
  const link = (id: string) => (
    <Button key={id} size="compact-sm" variant="subtle" onClick={() => select([id])}>
      {id}
    </Button>
  );
  return (
    <dl className="facts">
      {about.number !== null && (
        <>
          <dt>{own.number}</dt>
          <dd>{about.number}</dd>
        </>
      )}
      {about.typeId !== null && (
        <>
          <dt>{own.type}</dt>
          <dd title={about.typeId}>{pick(about.typeLabel, about.typeLabelZh) || about.typeId}</dd>
        </>
      )}
      {about.sizeMm.length > 0 && (
        <>
          <dt>{own.size}</dt>
          <dd>{about.sizeMm.join(" × ")} mm</dd>
        </>
      )}
      {about.parentId !== null && (
        <>
          <dt>{own.partOf}</dt>
          <dd>{link(about.parentId)}</dd>
        </>
      )}
      {about.holds !== null && (
        <>
          <dt>{own.holds}</dt>
          <dd>{link(about.holds)}</dd>
        </>
      )}
      {about.kind !== "panel" && about.children.length > 0 && (
        <>
          <dt>{own.parts}</dt>
          <dd>{about.children.map(link)}</dd>
        </>
      )}
    </dl>
  );
}

const WIRES_SHOWN = 60;

/** Findings, harnesses and wires. */
export function AboutMore({ about }: { readonly about: About }) {
  const { words, language } = useSpeech();
  const pick = usePick();
  const { bookId } = useDesk();
  const own = words.layout.chosen;
  const used = about.points.filter((point) => point.netId !== null || point.use !== "live");
  return (
    <>
      <Link className="about-thing" href={thingAddress(bookId, about.id)}>
        {words.serviceThing.everything}
      </Link>
      {about.findings.length > 0 && (
        <div className="group">
          <h4>
            {own.findings} <span className="dim">{about.findings.length}</span>
          </h4>
          {about.findings.map((finding) => {
            const wording = findingWords(language, finding.rule);
            return (
              <p
                key={`${finding.rule} ${finding.subjects.join(" ")}`}
                className={`effect finding ${finding.severity}`}
              >
                <b>
                  {words.common.severity[finding.severity]}: {wording.title}
                </b>
                <br />
                {wording.say(finding)}
              </p>
            );
          })}
        </div>
      )}
      {about.harnesses.length > 0 && (
        <div className="group">
          <h4>{own.harnesses}</h4>
          {about.harnesses.map((harness) => (
            <p key={harness.id} className="effect">
              <Link href={addressOf(bookId, { kind: "harness", id: harness.id })}>
                H{harness.number} {pick(harness.label, harness.labelZh)}
              </Link>
            </p>
          ))}
        </div>
      )}
      {used.length > 0 && (
        <div className="group">
          <h4>
            {own.contacts} <span className="dim">{used.length}</span>
          </h4>
          <table className="figures">
            <tbody>
              {used.slice(0, WIRES_SHOWN).flatMap((point) =>
                (point.wires.length === 0 ? [null] : point.wires).map((wire, i) => (
                  <tr key={`${point.id} ${wire?.id ?? ""}`}>
                    <th scope="row" title={point.label}>
                      {i === 0 ? point.localId : ""}
                    </th>
                    <td className="net">
                      {i > 0 ? "" : point.use === "live" ? (point.netId ?? own.noNet) : own[point.use]}
                    </td>
                    <WireCells wire={wire} />
                  </tr>
                )),
              )}
            </tbody>
          </table>
          {used.length > WIRES_SHOWN && (
            <p className="dim">{words.layout.follows.more(used.length - WIRES_SHOWN)}</p>
          )}
        </div>
      )}
      {about.wires.length > 0 && about.points.length === 0 && (
        <div className="group">
          <h4>
            {own.wire} <span className="dim">{about.wires.length}</span>
          </h4>
          <table className="figures">
            <tbody>
              {about.wires.slice(0, WIRES_SHOWN).map((wire) => (
                <tr key={wire.id}>
                  <td className="net">{wire.netId}</td>
                  <WireCells wire={wire} />
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </>
  );
}

function WireCells({ wire }: { readonly wire: About["wires"][number] | null }) {
  const words = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  if (wire === null) return <td colSpan={3} />;
  return (
    <>
      <td>
        <Link href={addressOf(bookId, { kind: "wire", id: wire.id })}>{wire.label}</Link> {wire.colour}
      </td>
      <td className="number">{words.layout.mm(wire.lengthMm)}</td>
      <td title={wire.otherPoint}>{pick(wire.otherLabel, wire.otherLabelZh) || wire.otherPoint}</td>
    </>
  );
}
