/** Keys that never change: they stand in storage, in figures and in exports. */

/** `beef/brisket-whole`, or `own/pork/schäufele` for a cut of the club's own. */
export type CutKey = string & { readonly key: 'cut' };
/** `usda/choice`. Grades are compared only within one scale, the part before the slash. */
export type GradeKey = string & { readonly key: 'grade' };
/** `brisket/thick`: the fat left on, told by a measure. */
export type StyleKey = string & { readonly key: 'style' };

/** Whether the bone is in. */
export const BONES = ['in', 'out'] as const;
export type Bone = (typeof BONES)[number];

/** What a piece is cooked in, the barest first. */
export const WRAPS = ['none', 'paper', 'foil', 'boat'] as const;
export type Wrap = (typeof WRAPS)[number];
