import { sourcesOf } from '#shared/sources/source.ts';

/** The rules that give fields their sizes. */
export const fieldSources = sourcesOf({
  'laws-of-the-game': {
    authors: 'International Football Association Board',
    year: null,
    title: 'Laws of the Game, Law 1: the field of play',
    where: 'the board’s own publication, every season',
    entry: 'title from memory',
  },
  'american-football-rules': {
    authors: 'National Federation of State High School Associations; National Collegiate Athletic Association',
    year: null,
    title: 'Football rules, rule 1: the field, and field diagram',
    where: 'rule books, every season',
    entry: 'title from memory',
  },
  'canadian-football-rules': {
    authors: 'Football Canada',
    year: null,
    title: 'Canadian amateur tackle football rule book, rule 1: the field',
    where: 'rule book',
    entry: 'title from memory',
  },
  'rugby-union-laws': {
    authors: 'World Rugby',
    year: null,
    title: 'Laws of the game of rugby union, law 1: the ground',
    where: 'law book, every season',
    entry: 'title from memory',
  },
  'rugby-league-laws': {
    authors: 'International Rugby League',
    year: null,
    title: 'Laws of the game, section 1: the playing field',
    where: 'law book',
    entry: 'title from memory',
  },
  'gaelic-rules': {
    authors: 'Gaelic Athletic Association',
    year: null,
    title: 'Official guide part 2, rule 1: the field of play',
    where: 'rule book',
    entry: 'title from memory',
  },
  'baseball-rules': {
    authors: 'Official Playing Rules Committee',
    year: null,
    title: 'Official baseball rules, rule 2.00: the playing field, and its diagrams',
    where: 'rule book, every season',
    entry: 'title from memory',
  },
  'australian-football-laws': {
    authors: 'Australian Football League',
    year: null,
    title: 'Laws of Australian football, law 3: the playing surface',
    where: 'law book, every season',
    entry: 'title from memory',
  },
  'cricket-conditions': {
    authors: 'International Cricket Council; Marylebone Cricket Club',
    year: null,
    title: 'Playing conditions, clause 19: boundaries; Laws of cricket, law 6: the pitch',
    where: 'playing conditions and law book',
    entry: 'title from memory',
  },
});
