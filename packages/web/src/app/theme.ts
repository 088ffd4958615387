import { createTheme, type MantineColorsTuple } from "@mantine/core";

/** The one accent: petrol. Shades 6 to 8 reach 4.5:1 against the paper and against white. */
const petrol: MantineColorsTuple = [
  "#e6f3f5",
  "#c9e3e8",
  "#9acad3",
  "#68afbc",
  "#3f96a6",
  "#22808f",
  "#0f6b7b",
  "#0b5a68",
  "#084a56",
  "#053a44",
];

/** Dark slate for the night, from text to ground. */
const slate: MantineColorsTuple = [
  "#e8ebee",
  "#cfd5da",
  "#aab3bb",
  "#86919b",
  "#55616b",
  "#3b454e",
  "#2d363e",
  "#222a31",
  "#1a2127",
  "#13191e",
];

/** A well-set engineering drawing on paper: thin lines, small corners, nothing that floats without reason. */
export const theme = createTheme({
  primaryColor: "petrol",
  primaryShade: { light: 7, dark: 5 },
  autoContrast: true,
  colors: { petrol, dark: slate },
  fontFamily: '"IBM Plex Sans", "Noto Sans SC", system-ui, sans-serif',
  headings: { fontFamily: '"IBM Plex Sans", "Noto Sans SC", system-ui, sans-serif', fontWeight: "600" },
  defaultRadius: 2,
  fontSizes: { xs: "12px", sm: "13px", md: "14px", lg: "16px", xl: "20px" },
  spacing: { xs: "4px", sm: "8px", md: "12px", lg: "16px", xl: "24px" },
  cursorType: "pointer",
});
