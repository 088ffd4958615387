import { ActionIcon } from "@mantine/core";
import { IconChevronDown, IconChevronUp } from "@tabler/icons-react";
import { useState } from "react";
import { useWords } from "../words.tsx";
import type { Stage } from "./actions.ts";
import { ArrangeBar } from "./arrange-bar.tsx";
import { type ChosenActions, ChosenBar, ChosenOne } from "./chosen.tsx";
import { ChosenKind } from "./chosen-kind.tsx";
import { Follows } from "./follows.tsx";
import type { Gestures } from "./gestures.ts";
import type { PanelEntries } from "./scene.ts";

/** What is selected, and what follows from the last change. On a phone it is a sheet that is drawn up from below. */
export function SidePanel({
  stage,
  entries,
  selected,
  mayEdit,
  actions,
  gestures,
  failed,
}: {
  /** Null before the drawing is there. */
  readonly stage: Stage | null;
  readonly entries: PanelEntries | null;
  readonly selected: readonly string[];
  readonly mayEdit: boolean;
  readonly actions: ChosenActions;
  readonly gestures: Gestures;
  readonly failed: (error: unknown) => void;
}) {
  const words = useWords();
  const own = words.layout.chosen;
  const [open, setOpen] = useState(false);
  const [only] = selected;
  const label = open ? own.less : own.more;
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
        {stage !== null && only !== undefined && selected.length === 1 && (
          <ChosenOne id={only} stage={stage} mayEdit={mayEdit} actions={actions} failed={failed}>
            {entries !== null && (
              <ChosenKind
                id={only}
                stage={stage}
                entries={entries}
                mayEdit={mayEdit}
                actions={actions}
                failed={failed}
              />
            )}
          </ChosenOne>
        )}
        {stage !== null && selected.length > 1 && (
          <>
            <ChosenBar actions={actions} mayEdit={mayEdit} title={own.many(selected.length)} />
            {mayEdit && <ArrangeBar stage={stage} selected={selected} failed={failed} />}
          </>
        )}
        {selected.length === 0 && (
          <p className="dim">
            {own.nothing}. {own.howTo} <span className="touch-only">{own.howToTouch}</span>
          </p>
        )}
      </div>
      <Follows selected={selected} gestures={gestures} />
    </aside>
  );
}
