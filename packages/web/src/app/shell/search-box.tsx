import { Combobox, TextInput, useCombobox } from "@mantine/core";
import { IconSearch } from "@tabler/icons-react";
import { useEffect, useRef, useState } from "react";
import { useLocation } from "wouter";
import type { AskAnswer } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { addressOf } from "../book/place-of.ts";
import { thingAddress } from "../service/address.ts";
import { usePick, useWords } from "../words.tsx";

/** The option that leads to everything of the first thing that was found. */
const THING = "thing";

/** Finds any id, number or label, and leads there. */
export function SearchBox({ bookId }: { readonly bookId: string }) {
  const words = useWords();
  const pick = usePick();
  const desk = useDesk();
  const [, go] = useLocation();
  const box = useCombobox();
  const input = useRef<HTMLInputElement>(null);
  const [text, setText] = useState("");
  const [found, setFound] = useState<AskAnswer<"search">>([]);
  /** What `found` answers; it comes a moment after what is typed. */
  const [answered, setAnswered] = useState("");
  const { selectFirstOption } = box;
  useEffect(() => {
    let wanted = true;
    void desk.ask("search", text).then(
      (answer) => {
        if (!wanted) return;
        setFound(answer);
        setAnswered(text);
      },
      () => undefined,
    );
    return () => {
      wanted = false;
    };
  }, [desk, text]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: every answer has a first option of its own
  useEffect(() => {
    if (answered !== "") selectFirstOption();
  }, [found, answered, selectFirstOption]);
  const open = (one: AskAnswer<"search">[number] | undefined): void => {
    if (one !== undefined) go(addressOf(bookId, one));
    setText("");
    box.closeDropdown();
  };
  const openThing = (): void => {
    go(thingAddress(bookId, found[0]?.id ?? text.trim()));
    setText("");
    box.closeDropdown();
  };
  useEffect(() => {
    const pressed = (event: KeyboardEvent): void => {
      if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "k") {
        event.preventDefault();
        input.current?.focus();
      }
    };
    addEventListener("keydown", pressed);
    return () => removeEventListener("keydown", pressed);
  }, []);
  return (
    <Combobox
      store={box}
      width={360}
      position="bottom-end"
      onOptionSubmit={(at) => (at === THING ? openThing() : open(found[Number(at)]))}
    >
      <Combobox.Target>
        <TextInput
          ref={input}
          aria-label={words.common.search}
          placeholder={words.shell.searchHint}
          leftSection={<IconSearch size={16} />}
          value={text}
          size="sm"
          w={220}
          onChange={(event) => {
            setText(event.currentTarget.value);
            box.openDropdown();
          }}
          onKeyDownCapture={(event) => {
            // Whoever types fast presses Enter before the answer is here: what was typed counts.
            if (event.key !== "Enter" || answered === text || text.trim() === "") return;
            event.preventDefault();
            event.stopPropagation();
            void desk.ask("search", text).then(
              ([first]) => first !== undefined && open(first),
              () => undefined,
            );
          }}
          onFocus={() => box.openDropdown()}
          onBlur={() => box.closeDropdown()}
        />
      </Combobox.Target>
      <Combobox.Dropdown hidden={text.trim() === ""}>
        <Combobox.Options mah={420} style={{ overflowY: "auto" }}>
          {found.map((one, i) => (
            <Combobox.Option key={`${one.kind} ${one.id}`} value={String(i)}>
              <b>{one.id}</b> <span className="dim">{words.shell.kinds[one.kind]}</span>
              <br />
              <span>{pick(one.label, one.labelZh)}</span>
            </Combobox.Option>
          ))}
          {found[0] !== undefined && (
            <Combobox.Option value={THING}>
              {words.serviceThing.everything}: <b>{found[0].id}</b>
            </Combobox.Option>
          )}
          {found.length === 0 && <Combobox.Empty>{words.shell.searchNone(text)}</Combobox.Empty>}
        </Combobox.Options>
      </Combobox.Dropdown>
    </Combobox>
  );
}
