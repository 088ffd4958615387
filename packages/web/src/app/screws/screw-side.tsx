import { ActionIcon } from "@mantine/core";
import { IconX } from "@tabler/icons-react";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { addressOf } from "../book/place-of.ts";
import { usePick, useWords } from "../words.tsx";
import { Fact } from "./fact.tsx";
import { FindingLines } from "./finding-lines.tsx";
import { ScrewReachFacts } from "./screw-reach.tsx";
import { ScrewSign } from "./sign.tsx";
import { Stack } from "./stack.tsx";
import { TypeName } from "./type-list.tsx";
import { screwsAddress } from "./use-screws-place.ts";

type About = ViewEntry<"screwAbout">;

/** Everything that is known of the screw that is picked. */
export function ScrewSide({
  about,
  types,
  typeId,
  chooseType,
  close,
}: {
  readonly about: About;
  readonly types: Entries<"screwTypes">;
  readonly typeId: string | null;
  readonly chooseType: (typeId: string | null) => void;
  readonly close: () => void;
}) {
  const words = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  const own = words.screws;
  const type = types.get(about.typeId);
  const sought = typeId === about.typeId;
  return (
    <>
      <div className="chosen-bar">
        <ScrewSign type={type} sizePx={24} />
        <h2>{pick(about.label, about.labelZh) || about.id}</h2>
        <ActionIcon
          variant="subtle"
          className="tool-button"
          aria-label={own.closeScrew}
          title={own.closeScrew}
          onClick={close}
        >
          <IconX size={18} />
        </ActionIcon>
      </div>
      <p className="dim">
        {about.id} · {words.layout.at(about.xMm, about.yMm)}
      </p>
      <button
        type="button"
        className="type-button"
        aria-pressed={sought}
        onClick={() => chooseType(sought ? null : about.typeId)}
      >
        <TypeName id={about.typeId} type={type} />
        <span className="dim">{own.allOfType(type?.count ?? 0)}</span>
      </button>
      <dl className="facts">
        {about.purpose !== "" && <Fact name={own.purpose}>{about.purpose}</Fact>}
        <Fact name={own.holds}>
          {about.holds === null ? (
            own.holdsNothing
          ) : (
            <Link href={addressOf(bookId, { kind: "item", id: about.holds.id })}>
              {pick(about.holds.label, about.holds.labelZh) || about.holds.id}
            </Link>
          )}
        </Fact>
        <Fact name={own.step}>
          {about.stepId === null ? (
            own.noStep
          ) : (
            <Link
              href={screwsAddress(bookId, {
                panelId: about.panelId,
                side: about.side,
                stepId: about.stepId,
                screwId: about.id,
              })}
            >
              {own.turn(about.stepNumber, about.turn)}
            </Link>
          )}
        </Fact>
        {about.moments.length > 0 && (
          <Fact name={own.moments}>{about.moments.map((one) => own.momentNames[one]).join(", ")}</Fact>
        )}
        {about.washer !== null && (
          <Fact name={own.washer}>{pick(about.washer.label, about.washer.labelZh) || about.washer.id}</Fact>
        )}
        {about.nut !== null && (
          <Fact name={own.nut}>{pick(about.nut.label, about.nut.labelZh) || about.nut.id}</Fact>
        )}
        {about.threadlocker && <Fact name={own.threadlocker}>{own.threadlockerYes}</Fact>}
      </dl>
      <Stack about={about} />
      <ScrewReachFacts about={about} />
      <p className="elsewhere">
        <Link href={addressOf(bookId, { kind: "item", id: about.id })}>{words.shell.sections.layout}</Link>
        <Link
          href={`/b/${bookId}/tables/${about.parentId === null ? "fasteners" : "mechanisms"}?id=${encodeURIComponent(
            about.parentId ?? about.id,
          )}`}
        >
          {words.shell.sections.tables}
        </Link>
        <Link href={`/b/${bookId}/tables/fastener_types?id=${encodeURIComponent(about.typeId)}`}>
          {own.typeTable}
        </Link>
      </p>
      <FindingLines findings={about.findings} about={about.id} />
    </>
  );
}
