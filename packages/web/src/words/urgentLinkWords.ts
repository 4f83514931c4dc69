/** The way from "My gauge" to the form for urgent reports; apart from the form's own words, which are loaded with it. */
export const urgentLinkWords = {
  en: {
    label: 'Report at once',
    what: 'hail, torrential rain, flooding, wind damage, heavy snow',
    loading: 'One moment…',
  },
  es: {
    label: 'Avisar ya',
    what: 'granizo, lluvia torrencial, inundación, daños por viento, nevada',
    loading: 'Un momento…',
  },
}
