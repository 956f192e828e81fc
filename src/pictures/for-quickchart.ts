/** What of a picture a chart host gets to see: figures and our own words, nothing that a member or a club wrote. */
import type { Json, Picture } from '../../shared/pictures/picture.ts';

interface Options {
  readonly [key: string]: Json;
}

const isOptions = (value: Json | undefined): value is Options =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Both together; where both say something, `over` wins. */
function merged(under: Options, over: Options): Options {
  const both = Object.entries(over).map(([key, value]): [string, Json] => {
    const below = under[key];
    return [key, isOptions(below) && isOptions(value) ? merged(below, value) : value];
  });
  return { ...under, ...Object.fromEntries(both) };
}

/** The host has this plugin for all charts; ours say their figures otherwise. */
const NO_LABELS = { plugins: { datalabels: { display: false } } };

/**
 * The chart's configuration without its notes, which may hold a club's own words and which the host could not draw;
 * a plain title, a legend and axes stand in their place.
 */
export function forQuickChart({ config, plain = {} }: Picture): Options {
  const { options = {}, ...rest } = config;
  if (!isOptions(options)) return rest;
  const { plugins = {}, layout: _layout, font: _font, ...others } = options;
  const { notes: _notes, ...kept } = isOptions(plugins) ? plugins : {};
  return { ...rest, options: merged(merged({ ...others, plugins: kept }, NO_LABELS), plain) };
}
