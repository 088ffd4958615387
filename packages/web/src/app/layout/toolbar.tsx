import { ActionIcon, Checkbox, NativeSelect, Popover, SegmentedControl } from "@mantine/core";
import {
  IconArrowsMaximize,
  IconBuildingBridge,
  IconClipboard,
  IconFileImport,
  IconHelp,
  IconLasso,
  IconLine,
  IconList,
  IconMapPin,
  IconMinus,
  IconPlus,
  IconPointer,
  IconRuler2,
  IconStack2,
} from "@tabler/icons-react";
import type { ComponentType, ReactNode } from "react";
import type { Entries } from "../book/desk-client.ts";
import { usePick, useWords } from "../words.tsx";
import type { Tool } from "./gesture-host.ts";
import { LAYERS, type Layer, type Layers } from "./layers.ts";
import type { Side } from "./scene.ts";

const TOOLS: readonly {
  readonly tool: Tool;
  readonly Icon: ComponentType<{ size?: number }>;
  readonly edits: boolean;
}[] = [
  { tool: "select", Icon: IconPointer, edits: false },
  { tool: "lasso", Icon: IconLasso, edits: false },
  { tool: "measure", Icon: IconRuler2, edits: false },
  { tool: "waypoint", Icon: IconMapPin, edits: true },
  { tool: "lane", Icon: IconLine, edits: true },
  { tool: "crossing", Icon: IconBuildingBridge, edits: true },
];

const GRIDS = [0, 0.5, 1, 2.5, 5, 10] as const;

function IconButton({
  label,
  onClick,
  pressed,
  children,
}: {
  readonly label: string;
  readonly onClick: () => void;
  readonly pressed?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <ActionIcon
      variant={pressed === true ? "light" : "subtle"}
      className="tool-button"
      aria-label={label}
      title={label}
      {...(pressed === undefined ? {} : { "aria-pressed": pressed })}
      onClick={onClick}
    >
      {children}
    </ActionIcon>
  );
}

/** Panel, side, tools, enlargement, layers. */
export function Toolbar({
  panels,
  panelId,
  side,
  go,
  tool,
  setTool,
  mayEdit,
  gridMm,
  setGridMm,
  layers,
  setLayer,
  zoom,
  fit,
  listShown,
  showList,
  help,
  bringIn,
  canPaste,
  paste,
}: {
  readonly panels: Entries<"layoutPanels">;
  readonly panelId: string;
  readonly side: Side;
  readonly go: (panelId: string, side: Side) => void;
  readonly tool: Tool;
  readonly setTool: (tool: Tool) => void;
  readonly mayEdit: boolean;
  readonly gridMm: number;
  readonly setGridMm: (mm: number) => void;
  readonly layers: Layers;
  readonly setLayer: (layer: Layer, shown: boolean) => void;
  readonly zoom: (factor: number) => void;
  readonly fit: () => void;
  readonly listShown: boolean;
  readonly showList: () => void;
  readonly help: () => void;
  readonly bringIn: () => void;
  /** Whether something was copied. */
  readonly canPaste: boolean;
  readonly paste: () => void;
}) {
  const words = useWords();
  const pick = usePick();
  const own = words.layout;
  const panel = panels.get(panelId);
  const sideLabel = (one: Side) => (
    <span title={own.items(panel?.[one] ?? 0)}>
      {words.common.side[one]} <span className="dim count">{panel?.[one] ?? 0}</span>
    </span>
  );
  return (
    <div className="layout-bar" role="toolbar" aria-label={own.tools.title}>
      <div className="bar-where">
        <IconButton label={own.list.show} onClick={showList} pressed={listShown}>
          <IconList size={18} />
        </IconButton>
        <NativeSelect
          className="bar-panel"
          aria-label={own.panel}
          size="sm"
          value={panelId}
          onChange={(event) => {
            const next = panels.get(event.currentTarget.value);
            if (next !== undefined) go(next.id, next[side] > 0 || next.top >= next.under ? side : "under");
          }}
          data={[...panels.values()].map(({ id, label, labelZh }) => ({
            value: id,
            label: pick(label, labelZh) || id,
          }))}
        />
        <SegmentedControl
          aria-label={own.side}
          size="sm"
          value={side}
          onChange={(value) => go(panelId, value === "under" ? "under" : "top")}
          data={[
            { value: "top", label: sideLabel("top") },
            { value: "under", label: sideLabel("under") },
          ]}
        />
      </div>
      <span className="bar-gap" />
      <div className="bar-tools">
        {TOOLS.filter(({ edits }) => mayEdit || !edits).map(({ tool: one, Icon }) => (
          <IconButton key={one} label={own.tools[one]} pressed={tool === one} onClick={() => setTool(one)}>
            <Icon size={18} />
          </IconButton>
        ))}
      </div>
      <span className="bar-gap" />
      <IconButton label={own.fit} onClick={fit}>
        <IconArrowsMaximize size={18} />
      </IconButton>
      <Popover position="bottom-end" withinPortal>
        <Popover.Target>
          <ActionIcon
            variant="subtle"
            className="tool-button"
            aria-label={own.layersTitle}
            title={own.layersTitle}
          >
            <IconStack2 size={18} />
          </ActionIcon>
        </Popover.Target>
        <Popover.Dropdown>
          <div className="layers">
            {LAYERS.toReversed().map((layer) => (
              <Checkbox
                key={layer}
                size="sm"
                label={
                  <>
                    <span className={`swatch ${layer}`} aria-hidden />
                    {own.layers[layer]}
                  </>
                }
                checked={layers[layer]}
                onChange={(event) => setLayer(layer, event.currentTarget.checked)}
              />
            ))}
          </div>
        </Popover.Dropdown>
      </Popover>
      <IconButton label={own.zoomOut} onClick={() => zoom(1 / 1.25)}>
        <IconMinus size={18} />
      </IconButton>
      <IconButton label={own.zoomIn} onClick={() => zoom(1.25)}>
        <IconPlus size={18} />
      </IconButton>
      {mayEdit && (
        <NativeSelect
          className="bar-grid"
          aria-label={own.grid}
          title={own.grid}
          size="sm"
          value={String(gridMm)}
          onChange={(event) => setGridMm(Number(event.currentTarget.value))}
          data={GRIDS.map((mm) => ({ value: String(mm), label: mm === 0 ? own.noGrid : own.mm(mm) }))}
        />
      )}
      {mayEdit && (
        <IconButton label={own.bringIn.title} onClick={bringIn}>
          <IconFileImport size={18} />
        </IconButton>
      )}
      {canPaste && (
        <IconButton label={own.pasteKey} onClick={paste}>
          <IconClipboard size={18} />
        </IconButton>
      )}
      <IconButton label={own.help.title} onClick={help}>
        <IconHelp size={18} />
      </IconButton>
    </div>
  );
}
