import { Button, TextInput } from "@mantine/core";
import { readSheetCode } from "@pinwright/contract";
import { type FormEvent, useEffect, useState, useSyncExternalStore } from "react";
import { Link } from "wouter";
import { useWords } from "../words.tsx";
import { PrintCard } from "./print-card.tsx";

const hear = (listener: () => void): (() => void) => {
  addEventListener("hashchange", listener);
  return () => removeEventListener("hashchange", listener);
};

/** The part of an address that a code on paper is written as; the sign-in leaves it where it is. */
const hashOf = (code: NonNullable<ReturnType<typeof readSheetCode>>): string =>
  [code.machine, code.revision, code.sheet, code.hash].map(encodeURIComponent).join("/");

/** The page that the code of a print leads to: on a phone, with one thing on it. */
export default function PrintPage() {
  const words = useWords();
  const own = words.printPage;
  const address = useSyncExternalStore(hear, () => location.href);
  const code = readSheetCode(address);
  useEffect(() => {
    document.title = `${own.title} · Pinwright`;
  }, [own]);
  return (
    <main className="print-page" id="main">
      <h1>{own.title}</h1>
      {code !== null && <PrintCard code={code} />}
      <Enter isWrong={code === null && location.hash.length > 1} />
      <p>
        <Link href="/">{own.toBooks}</Link>
      </p>
    </main>
  );
}

/** Takes a code that a scanner types, or a hand. */
function Enter({ isWrong }: { readonly isWrong: boolean }) {
  const own = useWords().printPage;
  const [text, setText] = useState("");
  const [wrong, setWrong] = useState(isWrong);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const code = readSheetCode(text);
    setWrong(code === null);
    if (code === null) return;
    location.hash = hashOf(code);
    setText("");
  };
  return (
    <form onSubmit={submit} className="print-enter">
      <TextInput
        label={own.enter}
        description={own.enterHint}
        value={text}
        size="md"
        autoCapitalize="off"
        autoComplete="off"
        spellCheck={false}
        error={wrong ? own.wrong : undefined}
        onChange={(event) => setText(event.currentTarget.value)}
      />
      <Button type="submit" size="md" variant="default" disabled={text.trim() === ""}>
        {own.look}
      </Button>
    </form>
  );
}
