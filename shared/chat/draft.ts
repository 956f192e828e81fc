/** How long a question, an error's *Fix it* and an *another piece* stay open. */
export const DRAFT_MILLISECONDS = 900_000; // 15 minutes
