/** How long what was given up is still there, in days: what replies promise, and what the upkeep keeps to. */

/** After this many the file itself and its newest backup hold nothing any more of what was erased. */
export const TIDIED_WITHIN_DAYS = 1;
/** Older backups go after as many: the last that holds what was erased is gone by then. */
export const BACKUPS_KEPT_DAYS = 14;
/** A club that removed the bot is erased after as many, unless whoever runs the bot says otherwise. */
export const PURGED_AFTER_DAYS = 30;
