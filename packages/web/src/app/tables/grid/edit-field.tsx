import type { CellKind } from "@pinwright/book";
import {
  type ClipboardEvent,
  type KeyboardEvent,
  type RefObject,
  useEffect,
  useId,
  useLayoutEffect,
  useRef,
  useState,
} from "react";
import { createPortal } from "react-dom";
import { useWords } from "../../words.tsx";
import { useCoarsePointer } from "./coarse-pointer.ts";
import type { Editor } from "./use-editor.ts";

interface EditFieldProps {
  readonly field: RefObject<HTMLTextAreaElement | null>;
  readonly editor: Editor;
  readonly kind: CellKind;
  readonly readOnly: boolean;
  readonly label: string;
  readonly gridId: string;
  readonly activeId: string;
  readonly hasList: boolean;
  readonly frozen: boolean;
  readonly topPx: number;
  readonly leftPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly onKeyDown: (event: KeyboardEvent<HTMLTextAreaElement>) => void;
  readonly onCopy: (event: ClipboardEvent) => void;
  readonly onPaste: (event: ClipboardEvent) => void;
}

/** The text field over the active cell, unseen until something is typed into it, and the look-up below it. */
export function EditField(props: EditFieldProps) {
  const { field, editor, kind, frozen, leftPx, gridId } = props;
  const coarse = useCoarsePointer();
  const listId = useId();
  const { list, at } = editor.offers;
  const editing = editor.mode !== null;
  const left = frozen ? `calc(var(--scrolled, 0px) + ${leftPx}px)` : leftPx;
  // A tablet shows its keyboard only when something is to be typed.
  const input = !editing && coarse ? "none" : kind === "number" || kind === "integer" ? "decimal" : "text";
  return (
    <>
      <textarea
        ref={field}
        className="grid-field"
        data-editing={editing || undefined}
        data-figure={kind === "number" || kind === "integer" || undefined}
        rows={1}
        spellCheck={false}
        autoComplete="off"
        autoCapitalize="off"
        inputMode={input}
        readOnly={props.readOnly}
        aria-label={props.label}
        aria-controls={list.length > 0 ? listId : gridId}
        aria-autocomplete={props.hasList ? "list" : undefined}
        aria-activedescendant={at >= 0 ? `${listId}-${at}` : editing ? undefined : props.activeId}
        style={{ top: props.topPx, left, minWidth: props.widthPx, minHeight: props.heightPx }}
        onKeyDown={props.onKeyDown}
        onInput={editor.typed}
        onCompositionStart={editor.typed}
        onBlur={() => editor.commit()}
        onCopy={props.onCopy}
        onCut={props.onCopy}
        onPaste={props.onPaste}
      />
      {editing && list.length > 0 && <Offers id={listId} field={field} editor={editor} />}
    </>
  );
}

/** The values that fit, under the field; above it where there is no room. */
function Offers({
  id,
  field,
  editor,
}: {
  readonly id: string;
  readonly field: RefObject<HTMLTextAreaElement | null>;
  readonly editor: Editor;
}) {
  const words = useWords().tables.grid;
  const { list, at } = editor.offers;
  const box = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState<{ left: number; top?: number; bottom?: number } | null>(null);
  useLayoutEffect(() => {
    const frame = field.current?.getBoundingClientRect();
    if (frame === undefined) return;
    const left = Math.max(4, Math.min(frame.left, innerWidth - 300));
    const below = innerHeight - frame.bottom > 260 || frame.top < 260;
    setPlace(below ? { left, top: frame.bottom + 2 } : { left, bottom: innerHeight - frame.top + 2 });
  }, [field]);
  useEffect(() => {
    box.current?.children[at]?.scrollIntoView({ block: "nearest" });
  }, [at]);
  return createPortal(
    <div
      ref={box}
      id={id}
      role="listbox"
      // So that it can be scrolled without a mouse; the field keeps the focus otherwise.
      tabIndex={0}
      aria-label={words.offers}
      className="grid-offers"
      style={place ?? { visibility: "hidden" }}
    >
      {list.map((offer, i) => (
        <div
          key={offer.value}
          id={`${id}-${i}`}
          role="option"
          aria-selected={i === at}
          className="grid-offer"
          onPointerDown={(event) => event.preventDefault()}
          onClick={() => editor.take(i)}
        >
          <b>{offer.value}</b> <span>{offer.label}</span>
        </div>
      ))}
    </div>,
    document.querySelector("main") ?? document.body,
  );
}
