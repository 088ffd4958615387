import { ActionIcon } from "@mantine/core";
import { IconChevronDown, IconChevronUp } from "@tabler/icons-react";
import { useState } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { useWords } from "../words.tsx";
import { ScrewSide } from "./screw-side.tsx";
import { StepSide } from "./step-side.tsx";
import { TypeList } from "./type-list.tsx";

/** The screw that is picked, else the step; below them every type. On a phone it is drawn up from below. */
export function ScrewsSide({
  step,
  about,
  types,
  typeId,
  here,
  chooseType,
  closeScrew,
}: {
  readonly step: ViewEntry<"stepLines"> | null;
  readonly about: ViewEntry<"screwAbout"> | undefined;
  readonly types: Entries<"screwTypes">;
  readonly typeId: string | null;
  /** How many of the type that is sought are on this panel side. */
  readonly here: number;
  readonly chooseType: (typeId: string | null) => void;
  readonly closeScrew: () => void;
}) {
  const words = useWords();
  const { bookId } = useDesk();
  const own = words.screws;
  const [open, setOpen] = useState(false);
  const label = open ? words.layout.chosen.less : words.layout.chosen.more;
  const all = [...types.values()].map(({ id, count }) => ({ typeId: id, count }));
  const sought = types.get(typeId ?? "");
  return (
    <aside className={open ? "layout-side open" : "layout-side"}>
      <ActionIcon
        variant="subtle"
        className="tool-button sheet-toggle"
        aria-expanded={open}
        aria-label={label}
        title={label}
        onClick={() => setOpen(!open)}
      >
        {open ? <IconChevronDown size={18} /> : <IconChevronUp size={18} />}
      </ActionIcon>
      <div className="layout-chosen">
        {about !== undefined ? (
          <ScrewSide about={about} types={types} typeId={typeId} chooseType={chooseType} close={closeScrew} />
        ) : step === null ? (
          <>
            <h2>{words.shell.sections.screws}</h2>
            <p>{own.empty}</p>
            <p>
              <Link href={`/b/${bookId}/tables/fasteners`}>{own.toFasteners}</Link>
            </p>
          </>
        ) : (
          <StepSide step={step} types={types} typeId={typeId} chooseType={chooseType} />
        )}
        {sought !== undefined && (
          <p role="status" className="sought-note">
            {own.sought(here, sought.count)}
          </p>
        )}
        {all.length > 0 && (
          <details className="all-types">
            <summary>
              {own.allTypes} <span className="dim">{all.length}</span>
            </summary>
            <TypeList list={all} types={types} typeId={typeId} choose={chooseType} />
          </details>
        )}
      </div>
    </aside>
  );
}
