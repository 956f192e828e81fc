/** The texts of a picture as data: what stands where. Our own chart plugin places and draws them. */

/** A place along one axis: layout pixels from the left or the top edge, or a value of that axis and pixels from there. */
export type Anchor = number | { readonly at: number; readonly shift?: number };

/** One text. A longer one than `width` goes on in a new line, and ends in an ellipsis where `lines` are used up. */
export type Note = {
  readonly text: string;
  readonly x: Anchor;
  /** The middle of its first line. */
  readonly y: Anchor;
  /** Which of its edges stands at `x`; `left` if not told. */
  readonly align?: 'left' | 'center' | 'right';
  /** In layout pixels. */
  readonly size: number;
  readonly bold?: boolean;
  readonly colour: string;
  /** The widest it may get, in layout pixels; the picture's own width if not told. */
  readonly width?: number;
  /** The most lines it may take; 1 if not told. */
  readonly lines?: number;
};
