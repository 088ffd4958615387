import { ActionIcon, Popover, TextInput } from "@mantine/core";
import {
  IconAlertTriangle,
  IconArrowBarToDown,
  IconArrowDown,
  IconArrowsHorizontal,
  IconArrowUp,
  IconClipboard,
  IconCopy,
  IconCut,
  IconEraser,
  IconFilter,
  IconKeyboard,
  IconPencil,
  IconRowInsertTop,
  IconRowRemove,
  IconSearch,
  IconSortAscending,
  IconSortDescending,
} from "@tabler/icons-react";
import type { ReactNode, Ref } from "react";
import { useWords } from "../words.tsx";
import type { Arrangement } from "./logic/arrange.ts";

interface TableBarProps {
  readonly readOnly: boolean;
  readonly arrangement: Arrangement;
  readonly onArrange: (arrangement: Arrangement) => void;
  readonly showFilters: boolean;
  readonly onShowFilters: (show: boolean) => void;
  readonly faultRows: number;
  readonly onlyFaults: boolean;
  readonly onOnlyFaults: (only: boolean) => void;
  readonly onNextFault: () => void;
  /** Column of the active cell. */
  readonly column: string | null;
  readonly canMove: boolean;
  readonly actions: {
    readonly copy: () => void;
    readonly cut: () => void;
    readonly paste: () => void;
    readonly fillDown: () => void;
    readonly edit: () => void;
    readonly clear: () => void;
    readonly insert: () => void;
    readonly remove: () => void;
    readonly move: (by: -1 | 1) => void;
    readonly fitWidths: () => void;
  };
  readonly firstRef: Ref<HTMLInputElement>;
}

/** What can be done to a table and its selected cells, by buttons; the keyboard does the same. */
export function TableBar(props: TableBarProps) {
  const { readOnly, arrangement, onArrange, actions, column } = props;
  const words = useWords().tables;
  const { bar } = words;
  const sort = (down: boolean) => column !== null && onArrange({ ...arrangement, sort: { column, down } });
  const sortedHere = arrangement.sort?.column === column ? arrangement.sort : null;
  return (
    <div className="table-bar" role="toolbar" aria-label={bar.label}>
      <TextInput
        ref={props.firstRef}
        size="xs"
        w={200}
        leftSection={<IconSearch size={14} />}
        aria-label={bar.filter}
        placeholder={bar.filter}
        value={arrangement.text}
        onChange={(event) => onArrange({ ...arrangement, text: event.currentTarget.value })}
      />
      <Tool label={bar.filters} on={props.showFilters} act={() => props.onShowFilters(!props.showFilters)}>
        <IconFilter size={18} />
      </Tool>
      <Tool
        label={bar.sortUp}
        on={sortedHere !== null && !sortedHere.down}
        act={() =>
          sortedHere !== null && !sortedHere.down ? onArrange({ ...arrangement, sort: null }) : sort(false)
        }
      >
        <IconSortAscending size={18} />
      </Tool>
      <Tool
        label={bar.sortDown}
        on={sortedHere?.down === true}
        act={() => (sortedHere?.down === true ? onArrange({ ...arrangement, sort: null }) : sort(true))}
      >
        <IconSortDescending size={18} />
      </Tool>
      {(props.faultRows > 0 || props.onlyFaults) && (
        <>
          <span className="table-gap" />
          <Tool
            label={bar.onlyFaults}
            on={props.onlyFaults}
            act={() => props.onOnlyFaults(!props.onlyFaults)}
          >
            <IconAlertTriangle size={18} />
          </Tool>
          <button type="button" className="table-next error-text" onClick={props.onNextFault}>
            {bar.nextFault}
          </button>
        </>
      )}
      <span className="table-gap" />
      <Tool label={bar.copy} act={actions.copy}>
        <IconCopy size={18} />
      </Tool>
      {!readOnly && (
        <>
          <Tool label={bar.cut} act={actions.cut}>
            <IconCut size={18} />
          </Tool>
          <Tool label={bar.paste} act={actions.paste}>
            <IconClipboard size={18} />
          </Tool>
          <Tool label={bar.fillDown} act={actions.fillDown}>
            <IconArrowBarToDown size={18} />
          </Tool>
          <Tool label={bar.edit} act={actions.edit}>
            <IconPencil size={18} />
          </Tool>
          <Tool label={bar.clear} act={actions.clear}>
            <IconEraser size={18} />
          </Tool>
          <span className="table-gap" />
          <Tool label={bar.insert} act={actions.insert} off={!props.canMove}>
            <IconRowInsertTop size={18} />
          </Tool>
          <Tool label={bar.remove} act={actions.remove}>
            <IconRowRemove size={18} />
          </Tool>
          <Tool label={bar.up} act={() => actions.move(-1)} off={!props.canMove}>
            <IconArrowUp size={18} />
          </Tool>
          <Tool label={bar.down} act={() => actions.move(1)} off={!props.canMove}>
            <IconArrowDown size={18} />
          </Tool>
        </>
      )}
      <span className="table-gap" />
      <Tool label={bar.fitWidths} act={actions.fitWidths}>
        <IconArrowsHorizontal size={18} />
      </Tool>
      <Popover position="bottom-end" withinPortal>
        <Popover.Target>
          <ActionIcon variant="subtle" color="gray" size={32} aria-label={bar.keys} title={bar.keys}>
            <IconKeyboard size={18} />
          </ActionIcon>
        </Popover.Target>
        <Popover.Dropdown>
          <h3 className="table-keys-title">{words.help.title}</h3>
          <dl className="table-keys">
            {words.help.keys.map(([keys, what]) => (
              <div key={keys}>
                <dt>{keys}</dt>
                <dd>{what}</dd>
              </div>
            ))}
          </dl>
        </Popover.Dropdown>
      </Popover>
    </div>
  );
}

function Tool({
  label,
  act,
  on,
  off,
  children,
}: {
  readonly label: string;
  readonly act: () => void;
  readonly on?: boolean;
  readonly off?: boolean;
  readonly children: ReactNode;
}) {
  return (
    <ActionIcon
      variant={on === true ? "light" : "subtle"}
      color={on === true ? "petrol" : "gray"}
      className="table-tool"
      aria-label={label}
      title={label}
      aria-pressed={on}
      disabled={off === true}
      onClick={act}
    >
      {children}
    </ActionIcon>
  );
}
