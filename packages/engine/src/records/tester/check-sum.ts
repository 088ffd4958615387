/**
 * Check of a line: CRC-16 with polynomial 0x1021, start 0xFFFF, most significant bit first, nothing inverted
 * (CRC-16/IBM-3740 of the Catalogue of parametrised CRC algorithms, whose check value for "123456789" is 29B1).
 * @returns four hexadecimal digits, upper case
 */
export function lineCheck(text: string): string {
  let sum = 0xffff;
  for (let i = 0; i < text.length; i++) {
    sum ^= (text.charCodeAt(i) & 0xff) << 8;
    for (let bit = 0; bit < 8; bit++) sum = (sum & 0x8000) === 0 ? sum << 1 : (sum << 1) ^ 0x1021;
    sum &= 0xffff;
  }
  return sum.toString(16).toUpperCase().padStart(4, "0");
}
