/**
 * Why a path within a ZIP is refused, or null when it is a plain relative path. Paths that climb out of the
 * folder, absolute ones, drive letters and backslashes never come from a program that means well.
 */
export function zipPathProblem(path: string): string | null {
  if (path === "") return "an empty name";
  if (path.length > 500) return "a name of more than 500 characters";
  if (/\p{Cc}/u.test(path)) return "a control character";
  if (path.includes("\\")) return "a backslash";
  if (path.startsWith("/")) return "an absolute path";
  if (/^[a-z]:/i.test(path)) return "a drive letter";
  const parts = path.replace(/\/$/, "").split("/");
  if (parts.includes("..")) return "`..`, which climbs out of the folder";
  if (parts.includes(".") || parts.includes("")) return "an empty part or `.`";
  return null;
}
