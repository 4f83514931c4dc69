/** Neighbouring reports that take part in one expectation. */
export const mostNeighbours = 32
/** Kept in reserve for days on which some do not report. */
export const reserveNeighbours = 8
