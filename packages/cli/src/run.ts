import { parseArgs } from "node:util";
import type { Command, CommandCall } from "./command.ts";
import { STATUS, type Status, type Terminal, UsageError } from "./terminal.ts";

/** `  --shop DIR   folder of the shop's tables` */
function optionLines(command: Command): readonly string[] {
  const rows = Object.entries(command.options).map(
    ([name, option]) =>
      [`--${name}${option.value === undefined ? "" : ` ${option.value}`}`, option.about] as const,
  );
  const width = Math.max(0, ...rows.map(([left]) => left.length));
  return rows.map(([left, about]) => `  ${left.padEnd(width)}  ${about}`);
}

/** Usage of one command. */
function usageOf(command: Command): string {
  return [
    `pinwright ${command.name} ${command.operands}`.trimEnd(),
    `  ${command.about}`,
    ...optionLines(command),
  ].join("\n");
}

/** Usage of the whole program. */
function usage(commands: readonly Command[]): string {
  const width = Math.max(...commands.map((c) => `${c.name} ${c.operands}`.length));
  return [
    "pinwright COMMAND …: one definition of a machine, and everything the floor builds from",
    "",
    ...commands.map((c) => `  ${`${c.name} ${c.operands}`.padEnd(width)}  ${c.about}`),
    "",
    "pinwright COMMAND --help tells a command's options.",
    "Exit status: 0 good; 1 something was found; 2 wrong call; 3 it could not be done.",
  ].join("\n");
}

function parse(command: Command, args: readonly string[]): CommandCall {
  const options = Object.fromEntries(
    Object.entries(command.options).map(([name, o]) => [
      name,
      { type: o.type, multiple: o.multiple ?? false },
    ]),
  );
  let parsed: ReturnType<typeof parseArgs>;
  try {
    parsed = parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
  const [least, most] = command.count;
  if (parsed.positionals.length < least || parsed.positionals.length > most)
    throw new UsageError(
      `expected ${command.operands || "no operands"}, got ${parsed.positionals.join(" ") || "nothing"}`,
    );
  const texts = (option: string): readonly string[] => {
    const value = parsed.values[option];
    return [value]
      .flat()
      .filter((v) => typeof v === "string")
      .flatMap((v) => v.split(","))
      .filter((v) => v !== "");
  };
  return {
    positionals: parsed.positionals,
    texts,
    text: (option) => texts(option).at(-1),
    flag: (option) => parsed.values[option] === true,
  };
}

/** Runs one call of the program and gives its exit status; nothing is thrown. */
export async function run(
  commands: readonly Command[],
  args: readonly string[],
  terminal: Terminal,
): Promise<Status> {
  const [name, ...rest] = args;
  if (name === undefined || name === "--help" || name === "help") {
    terminal.out(`${usage(commands)}\n`);
    return name === undefined ? STATUS.usage : STATUS.good;
  }
  const command = commands.find((c) => c.name === name);
  if (command === undefined) {
    terminal.err(`pinwright: there is no command "${name}"\n\n${usage(commands)}\n`);
    return STATUS.usage;
  }
  if (rest.includes("--help")) {
    terminal.out(`${usageOf(command)}\n`);
    return STATUS.good;
  }
  try {
    return await command.run(parse(command, rest), terminal);
  } catch (error) {
    if (error instanceof UsageError) {
      terminal.err(`pinwright ${command.name}: ${error.message}\n\n${usageOf(command)}\n`);
      return STATUS.usage;
    }
    terminal.err(`pinwright ${command.name}: ${error instanceof Error ? error.message : String(error)}\n`);
    return STATUS.failed;
  }
}
