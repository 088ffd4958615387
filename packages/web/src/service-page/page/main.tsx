import { type FaultFile, readFaultFile } from "@pinwright/engine";
import type { Language } from "@pinwright/words";
import { FAULT_WORDS } from "@pinwright/words/service";
import { useEffect, useMemo, useState } from "react";
import { createRoot } from "react-dom/client";
import { FaultFinding } from "../fault-finding.tsx";
import { FinderClient } from "./finder-client.ts";
import "./own.css";

const LANGUAGES: readonly (readonly [Language, string])[] = [
  ["en", "English"],
  ["zh", "中文"],
];
const KEY = "pinwright.language";

const textOf = (id: string): string => document.getElementById(id)?.textContent ?? "";

/** What was chosen before; else what the file was made for; else what the browser speaks. */
function preferred(): Language {
  try {
    const kept = localStorage.getItem(KEY);
    if (kept === "en" || kept === "zh") return kept;
  } catch {
    // Some browsers keep nothing for pages from a file.
  }
  const made = document.documentElement.dataset.language;
  if (made === "en" || made === "zh") return made;
  return navigator.language.toLowerCase().startsWith("zh") ? "zh" : "en";
}

type State =
  | { readonly at: "opening"; readonly percent: number }
  | { readonly at: "failed"; readonly why: string };

function ServicePage({ file }: { readonly file: FaultFile }) {
  const [language, setLanguage] = useState(preferred);
  const [state, setState] = useState<State | "open">({ at: "opening", percent: 0 });
  const client = useMemo(
    () =>
      new FinderClient(textOf("finder-code"), file, (message) => {
        if (message.type === "progress")
          setState({ at: "opening", percent: Math.round(100 * message.progress) });
        else if (message.type === "opened") setState("open");
        else if (message.type === "failed") setState({ at: "failed", why: message.message });
      }),
    [file],
  );
  const host = useMemo(
    () => ({
      file,
      answer: (session: Parameters<FinderClient["answer"]>[0]) => client.answer(session),
      thing: null,
    }),
    [file, client],
  );
  const { faults: words } = FAULT_WORDS[language];
  useEffect(() => {
    document.documentElement.lang = language === "zh" ? "zh-Hans" : "en";
    document.title = `${words.title} · ${file.machine.labels[language === "zh" ? 1 : 0]}`;
    try {
      localStorage.setItem(KEY, language);
    } catch {
      // Then it is asked for again.
    }
  }, [language, words, file]);
  return (
    <>
      <header className="own-bar">
        <h1>{file.machine.labels[language === "zh" ? 1 : 0]}</h1>
        <nav aria-label={words.language}>
          {LANGUAGES.map(([one, name]) => (
            <button
              key={one}
              type="button"
              lang={one === "zh" ? "zh-Hans" : "en"}
              aria-pressed={one === language}
              onClick={() => setLanguage(one)}
            >
              {name}
            </button>
          ))}
        </nav>
      </header>
      <main>
        {state === "open" ? (
          <FaultFinding host={host} language={language} />
        ) : (
          <p className="own-wait" role="status">
            {state.at === "opening" ? words.opening(state.percent) : words.failed(state.why)}
          </p>
        )}
      </main>
    </>
  );
}

function start(): void {
  const root = document.getElementById("app");
  if (root === null) return;
  try {
    createRoot(root).render(<ServicePage file={readFaultFile(JSON.parse(textOf("fault-file")))} />);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    root.textContent = `${FAULT_WORDS.en.faults.failed(why)} ${FAULT_WORDS.zh.faults.failed(why)}`;
  }
}

start();
