import { sourcesOf } from '#shared/sources/source.ts';

export const injurySources = sourcesOf({
  'nebraska-tall-fescue-dark-1982': {
    authors: 'University of Nebraska',
    year: 1982,
    title: 'Tall fescue moved from 14-hour days into darkness: leaf growth and respiration',
    where: 'Crop Science 22:781-786',
    entry: 'title in our words',
  },
  'watschke-1973': {
    authors: 'Watschke, Schmidt, Carson & Blaser',
    year: 1973,
    title: 'Temperature influence on the physiology of selected cool season turfgrasses and bermudagrass',
    where: 'Agronomy Journal 65',
    entry: 'title from memory',
  },
  'mcvey-mayer-1969': {
    authors: 'McVey & Mayer',
    year: 1969,
    title: 'Response of hybrid bermudagrass and Kentucky bluegrass to shading by tinted acrylic sheets',
    where: 'Agronomy Journal 61:655-659, abstract',
    entry: 'title from memory',
  },
  'minner-2001': {
    authors: 'Minner, Li, Patterozzi & Salmond',
    year: 2001,
    title: 'Effect of tarp color on turfgrass growth',
    where: 'International Turfgrass Society Research Journal 9:328-333, abstract',
    entry: 'title from memory',
  },
  'trade-note-covers-2015': {
    authors: 'Trade note on covered turf',
    year: 2015,
    title: 'First responses of turf to event covers',
    where: 'Trade press, December 2015; weak evidence',
    entry: 'title in our words',
  },
  'johns-beard-1979': {
    authors: 'Johns & Beard',
    year: 1979,
    title: 'Effects and correction of petroleum spills on turf',
    where: 'Agronomy Journal 71:945-947',
    entry: 'title from memory',
  },
  'gaussoin-1998': {
    authors: 'Gaussoin',
    year: 1998,
    title: 'Review of petroleum spills and their treatment on turf',
    where: 'Golf Course Management, February 1998',
    entry: 'title from memory',
  },
});
