import { ActionIcon, NativeSelect, SegmentedControl, Switch } from "@mantine/core";
import {
  IconArrowsMaximize,
  IconDeviceTablet,
  IconFocusCentered,
  IconList,
  IconMinus,
  IconPlus,
} from "@tabler/icons-react";
import type { ReactNode } from "react";
import { Link } from "wouter";
import type { Entries } from "../book/desk-client.ts";
import type { Side } from "../layout/scene.ts";
import { usePick, useWords } from "../words.tsx";

/** Panel, side, how an underside is looked at, enlargement, and the way to the bench. */
export function MapBar({
  panels,
  panelId,
  side,
  go,
  fromTop,
  setFromTop,
  zoom,
  fit,
  fitStep,
  listShown,
  showList,
  bench,
}: {
  readonly panels: Entries<"layoutPanels">;
  readonly panelId: string;
  readonly side: Side;
  readonly go: (panelId: string, side: Side) => void;
  readonly fromTop: boolean;
  readonly setFromTop: (fromTop: boolean) => void;
  readonly zoom: (factor: number) => void;
  readonly fit: () => void;
  readonly fitStep: () => void;
  readonly listShown: boolean;
  readonly showList: () => void;
  /** Address of the step on the screen at the bench; null: there is no step. */
  readonly bench: string | null;
}) {
  const words = useWords();
  const pick = usePick();
  const own = words.screws.bar;
  const button = (label: string, icon: ReactNode, onClick: () => void, pressed?: boolean) => (
    <ActionIcon
      variant={pressed === true ? "light" : "subtle"}
      className="tool-button"
      aria-label={label}
      title={label}
      onClick={onClick}
      {...(pressed === undefined ? {} : { "aria-pressed": pressed })}
    >
      {icon}
    </ActionIcon>
  );
  return (
    <div className="layout-bar" role="toolbar" aria-label={own.title}>
      <div className="bar-where">
        {button(own.list, <IconList size={18} />, showList, listShown)}
        <NativeSelect
          className="bar-panel"
          aria-label={words.layout.panel}
          size="sm"
          value={panelId}
          onChange={(event) => go(event.currentTarget.value, side)}
          data={[...panels.values()].map(({ id, label, labelZh }) => ({
            value: id,
            label: pick(label, labelZh) || id,
          }))}
        />
        <SegmentedControl
          aria-label={words.layout.side}
          size="sm"
          value={side}
          onChange={(value) => go(panelId, value === "under" ? "under" : "top")}
          data={[
            { value: "top", label: words.common.side.top },
            { value: "under", label: words.common.side.under },
          ]}
        />
      </div>
      {side === "under" && (
        <Switch
          label={own.fromTop}
          title={own.fromTopHint}
          checked={fromTop}
          onChange={(event) => setFromTop(event.currentTarget.checked)}
        />
      )}
      <span className="bar-gap" />
      {button(own.fit, <IconArrowsMaximize size={18} />, fit)}
      {button(own.fitStep, <IconFocusCentered size={18} />, fitStep)}
      {button(own.smaller, <IconMinus size={18} />, () => zoom(1 / 1.25))}
      {button(own.larger, <IconPlus size={18} />, () => zoom(1.25))}
      {bench !== null && (
        <ActionIcon
          component={Link}
          href={bench}
          variant="subtle"
          className="tool-button"
          aria-label={own.bench}
          title={own.bench}
        >
          <IconDeviceTablet size={18} />
        </ActionIcon>
      )}
    </div>
  );
}
