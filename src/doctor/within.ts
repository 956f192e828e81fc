/**
 * Whether a version is in one of some ranges from one `major.minor` to below another, as package.json has them of Node.
 * @example isWithin('22.23.3', '>=20.19 <21 || >=22.12 <23') // true
 */
export function isWithin(version: string, ranges: string): boolean {
  return ranges.split(' || ').some((range) => {
    const [from = '', below = ''] = range.split(' ').map((bound) => bound.replace(/^\D+/, ''));
    return compare(version, from) >= 0 && compare(version, below) < 0;
  });
}

/** By major and minor alone; what is not told is 0. */
function compare(one: string, other: string): number {
  const [major = 0, minor = 0] = one.split('.').map(Number);
  const [otherMajor = 0, otherMinor = 0] = other.split('.').map(Number);
  return major - otherMajor || minor - otherMinor;
}
