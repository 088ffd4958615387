import { mechanismKinds } from "./mechanism-kind.ts";
import { PLAY_MECHANISMS } from "./mechanism-types-play.ts";
import { SHOW_MECHANISMS } from "./mechanism-types-show.ts";

export const mechanismTypes = mechanismKinds([...PLAY_MECHANISMS, ...SHOW_MECHANISMS]);
