/** Where the factors of drills are kept, as JSON by gauge id. */
export const DRILL_FACTORS_KEY = 'drill factors'
