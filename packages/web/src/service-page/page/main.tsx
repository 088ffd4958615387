import { type FaultFile, readFaultFile } from "@pinwright/engine";
import type { Language } from "@pinwright/words";
import { FAULT_WORDS } from "@pinwright/words/service";
import { useEffect, useState } from "react";
import { createRoot } from "react-dom/client";
import { WithFinder } from "../with-finder.tsx";
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

/** The finder's code lies in the page as text: a page from a file may load nothing. */
function newWorker(): Worker {
  const code = new Blob([textOf("finder-code")], { type: "text/javascript" });
  return new Worker(URL.createObjectURL(code));
}

function ServicePage({ file }: { readonly file: FaultFile }) {
  const [language, setLanguage] = useState(preferred);
  const { faults: words } = FAULT_WORDS[language];
  const name = file.machine.labels[language === "zh" ? 1 : 0];
  useEffect(() => {
    document.documentElement.lang = language === "zh" ? "zh-Hans" : "en";
    document.title = `${words.title} · ${name}`;
    try {
      localStorage.setItem(KEY, language);
    } catch {
      // Then it is asked for again.
    }
  }, [language, words, name]);
  return (
    <>
      <header className="own-bar">
        <h1>{name}</h1>
        <nav aria-label={words.language}>
          {LANGUAGES.map(([one, label]) => (
            <button
              key={one}
              type="button"
              lang={one === "zh" ? "zh-Hans" : "en"}
              aria-pressed={one === language}
              onClick={() => setLanguage(one)}
            >
              {label}
            </button>
          ))}
        </nav>
      </header>
      <main>
        <WithFinder file={file} language={language} newWorker={newWorker} thing={null} />
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
