import type { RuleWords } from "../finding.ts";

/** Wording of the rules of the solved circuits: limits, fuses, coils, lamps, supplies and earth. */
export const electricFindings: Readonly<Record<string, RuleWords>> = {
  "bond-open": {
    title: "An earth bond is not connected",
    says: "Bond {0}: {1} does not reach the earth of the mains inlet.",
    why: "The metal can become live, and no fuse opens.",
    todo: "Wire the bond to the earth of the inlet.",
  },
  "bond-thin": {
    title: "An earth bond is thinner than it is to be",
    says: "Bond {0}: its wire {1} is {wire_type} with {area_mm2} mm²; {asked_type} with {asked_mm2} mm² is asked for.",
    why: "It may melt before the fuse opens, and the metal stays live. Local codes and a licensed electrician decide.",
    todo: "Give the wire the type that the bond asks for, or correct the bond.",
  },
  "coil-diode-missing": {
    title: "A coil has no diode",
    says: "{0}: {most_a} A at {volts} V are switched off, with {stored_mj} mJ in its field; no diode lies across {1}.",
    why: "The field drives the voltage up until the driver breaks down.",
    todo: "Fit a diode across the coil, its cathode on the feed.",
  },
  "coil-diode-small": {
    title: "A coil's diode is too small",
    says: "{1} at {0}: {peak_a} A peak, {mean_a} A mean, {volts} V; it stands {rated_peak_a} A again and again, {rated_a} A mean, {block_v} V.",
    why: "A broken diode takes the driver with it.",
    todo: "Fit a larger diode.",
  },
  "coil-held": {
    title: "A coil is held too long",
    says: "{0}: held for {asked_s} s; its winding is at {limit_c} °C after {hold_s} s.",
    why: "The insulation of the winding ages fast, and the bobbin softens.",
    todo: "Hold it shorter or with less duty, or wind it for more resistance.",
  },
  "coil-hot": {
    title: "A coil gets too hot in hard play",
    says: "{0}: {duty_pct} % at full voltage, {allowed_pct} % allowed. {mean_w} W × {rise_k_w} K/W + {ambient_c} °C = {reaches_c} °C; its class allows {limit_c} °C.",
    why: "The insulation of the winding ages fast, and the bobbin softens.",
    todo: "Pulse it shorter or less often, or wind it for more resistance.",
  },
  "coil-stuck": {
    title: "A coil that sticks on burns",
    says: "{0}: {volts} V ÷ {ohm} Ω, hot {stuck_a} A, against {fuse} with {fuse_a} A, open after {fuse_s} s. The winding passes {limit_c} °C after {stuck_s} s; the driver lets go after {timeout_s} s.",
    why: "One stuck coil draws less than opens its fuse; only a time-out saves it.",
    todo: "Give the driver a time-out that is shorter, or the coil a fuse of its own.",
  },
  "coil-winding": {
    title: "A coil's resistance does not fit its winding",
    says: "{1}: {ohm} Ω in the book; its turns, wire and bobbin make {winding_ohm} Ω, beyond {tolerance_pct} %.",
    why: "One of them is wrong, and the coil will not pull as designed.",
    todo: "Measure the coil, then correct the resistance, the turns or the wire.",
  },
  "contact-hot": {
    title: "A contact carries too much",
    says: "{0}: {rms_a} A rms in hard play. {family}: {rated_a} A × {contact_share}, beside neighbours that heat like {loaded} contacts in all, = {limit_a} A.",
    why: "The contact overheats, its spring goes soft, and it burns.",
    todo: "Spread the current over more contacts, or use larger ones.",
  },
  "earth-second": {
    title: "A return meets earth at two places",
    says: "The return of {0} is tied to earth at {points} items: {rest}.",
    why: "Return current flows over metal and earth wires, and lifts the zero of what is tied there.",
    todo: "Keep one declared tie and open the others.",
  },
  "fuse-breaking": {
    title: "A fuse cannot break its short circuit",
    says: "{1}: {volts} V ÷ {loop_ohm} Ω = {breaks_a} A right behind it; it breaks {breaking_a} A.",
    why: "The arc keeps burning and the fuse can burst.",
    todo: "Use a fuse with a higher breaking capacity.",
  },
  "fuse-large": {
    title: "A fuse is too large for a wire behind it",
    says: "{1} carries {rated_a} A for ever; {2} may carry {limit_a} A: {single_a} A × {ambient_share} in warm air × {bundle_share} in a bundle of {wires}. Of the wires in stock {least_type} would do.",
    why: "An overload below the fuse's rating heats the wire until its insulation fails.",
    todo: "Use a smaller fuse or a thicker wire, or fuse the branch by itself.",
  },
  "fuse-never-opens": {
    title: "A supply can never open a fuse",
    says: "{1}, {rated_a} A {speed}: in a short circuit over {loop_ohm} Ω {2} ({mode}) gives {held_a} A, {held_multiple} times the rating, for bursts of {burst_ms} ms; its stored energy adds {stored_a2s} A²s, the fuse melts at {melting_a2s} A²s.",
    why: "A short circuit in one branch takes the whole supply down, and nobody sees which branch it is.",
    todo: "Use a smaller or quicker fuse, or a supply that holds its limit current.",
    values: {
      mode: {
        none: "none",
        constant: "constant current",
        "fold-back": "fold-back",
        hiccup: "hiccup",
        latch: "latching off",
      },
    },
  },
  "fuse-overloaded": {
    title: "A fuse is too small for its load",
    says: "{1}: {rms_a} A rms ÷ {ambient_share} at {ambient_c} °C = {steady_a} A; it is rated {rated_a} A. The next of the series is {required_a} A.",
    why: "It opens in play without a fault.",
    todo: "Use the larger rating, or take loads off this fuse.",
  },
  "fuse-pulsed": {
    title: "A fuse is worn out by pulses",
    says: "{1}: {peak_a} A, up to {pulse_ms} ms, are {pulse_a2s} A²s; ÷ {share_pct} % for {pulses} pulses = {needed_a2s} A²s. Its {rated_a} A melt at {melting_a2s} A²s; it takes {required_a} A.",
    why: "Its element tires a little with each pulse and opens one day without a fault.",
    todo: "Use a larger or slower fuse, or take pulsed loads off it.",
  },
  "fuse-slow": {
    title: "A wire is harmed before its fuse opens",
    says: "{1}, {2}: short circuit over {loop_ohm} Ω, {first_a} A at first ({stored_a2s} A²s stored), then {held_a} A; open after {opens_s} s. {area_mm2} mm² with k = {k} stands {adiabatic_a2s} A²s, {harm_s} s of that current: {used_pct} % used. Of the wires in stock {least_type} would do.",
    why: "The insulation melts into its neighbours, and the bundle burns.",
    todo: "Use a smaller or quicker fuse, a thicker wire, or a supply that gives more current for a moment.",
  },
  "fuse-volts": {
    title: "A fuse is rated below its voltage",
    says: "{1}: {volts} V; it is rated {rated_v} V.",
    why: "The arc does not go out when it opens.",
    todo: "Use a fuse that is rated for the voltage.",
  },
  "led-current": {
    title: "An LED gets too much current",
    says: "{0}: ({volts} V − {forward_v} V) ÷ {ohm} Ω gives up to {most_a} A at {duty_pct} % of the time; it stands {stands_a} A. Of the E24 series {e24_ohm} Ω would do.",
    why: "It fades early, or breaks.",
    todo: "Use a larger resistor.",
  },
  "metal-unbonded": {
    title: "Metal that can be touched has no bond",
    says: "{0} has bare metal and no row in the table of bonds.",
    why: "If a live wire touches it, nothing trips, and someone gets a shock.",
    todo: "Add its bond, or say that it needs none.",
  },
  "net-drop": {
    title: "A net loses too much voltage",
    says: "Net {0}: {drop_v} V ({drop_pct} %) from {2} to {1} at up to {most_a} A, in {wires} wires {wires_v} V, in contacts and links {contacts_v} V; {limit_v} V ({limit_pct} %) allowed. What helps most: {help} at {help_wire} {help_type}, leaves {help_v} V.",
    why: "What hangs at the far end gets too little when everything is on.",
    todo: "Use the help that is named, or allow more drop.",
    values: {
      help: {
        thicker: "a thicker wire",
        "second-feed": "a second wire beside it",
        "shorter-chain": "a chain of its own",
        none: "nothing at",
      },
    },
  },
  "resistor-hot": {
    title: "A lamp's resistor gets too hot",
    says: "{0}: {most_a} A² × {ohm} Ω × {duty_pct} % = {heat_w} W; it is made for {rated_w} W.",
    why: "It browns the board and drifts.",
    todo: "Use a resistor for more power, or less current.",
  },
  "return-shared": {
    title: "Coils and logic share a return",
    says: "{0}: the currents of {loud} coils and motors and of {quiet} logic loads return through the same {wires} wires, of {1} and {2} among others.",
    why: "Each pulse lifts the zero of the logic, and the machine resets or sees switches that nobody pressed.",
    todo: "Give each its own return as far as the star point.",
  },
  "supply-overloaded": {
    title: "A supply is too small",
    says: "{0}: {rms_a} A rms in hard play, {hold_a} A with all that may be held, {steady_a} A always; rated {rated_a} A.",
    why: "It limits or shuts off in play.",
    todo: "Use a larger supply, or move loads to another.",
  },
  "supply-peak": {
    title: "A supply's worst moment is above its limit",
    says: "{0}: {worst_a} A with {loads} loads, limit {limit_a} A. ({worst_a} − {limit_a}) A × {volts} V, falling over {pulse_ms} ms, = {needed_j} J; of {stored_j} J stored, a sag of 10 % gives {held_j} J.",
    why: "The voltage falls for a moment: coils pull weaker, and what else hangs there may reset.",
    todo: "Let fewer loads fire together (groups), store more energy, or use a larger supply.",
  },
  "wire-hot": {
    title: "A wire carries too much",
    says: "{0}: {rms_a} A rms in hard play; may carry {single_a} A × {ambient_share} in air of {ambient_c} °C × {bundle_share} in a bundle of {wires} wires loaded {loading_pct} % = {limit_a} A. Of the wires in stock {least_type} would do.",
    why: "Its insulation gets hotter than it stands, and softens.",
    todo: "Use a thicker wire, split the current, or take the wire out of the bundle.",
  },
  "wire-unprotected": {
    title: "Wires that no fuse protects",
    says: "{0}: {wires} wires, {length_mm} mm in all, before the first fuse; a short circuit lets {held_a} A flow, the thinnest may carry {limit_a} A. {rest}",
    why: "The wire burns until something else stops the current.",
    todo: "Put a fuse at the supply, or keep these wires short, apart and double insulated.",
  },
};
