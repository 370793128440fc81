import { sourcesOf } from '#shared/sources/source.ts';

export const weatherSources = sourcesOf({
  'allen-1998': {
    authors: 'Allen, Pereira, Raes & Smith',
    year: 1998,
    title: 'Crop evapotranspiration: guidelines for computing crop water requirements',
    where: 'FAO Irrigation and Drainage Paper 56, Rome',
  },
  'asce-ewri-2005': {
    authors: 'Allen, Walter, Elliott, Howell, Itenfisu, Jensen & Snyder (eds.)',
    year: 2005,
    title: 'The ASCE standardized reference evapotranspiration equation',
    where: 'American Society of Civil Engineers, Environmental and Water Resources Institute, Reston; appendix C',
  },
  'mehta-2006': {
    authors: 'Mehta',
    year: 2006,
    title: 'A note on the Hargreaves method of estimating reference evapotranspiration, with a worked case',
    where: 'Arghyam and Cornell University',
  },
  'jrc-crop-monitoring': {
    authors: 'European Commission, Joint Research Centre',
    year: null,
    title: 'Daily station weather and reference evapotranspiration of the crop-monitoring database, station 10870',
    where: 'Open data file of the pcse crop simulation environment, January 2013 to June 2014',
  },
  'richardson-1981': {
    authors: 'Richardson',
    year: 1981,
    title: 'Stochastic simulation of daily precipitation, temperature, and solar radiation',
    where: 'Water Resources Research 17:182-190',
  },
  'richardson-wright-1984': {
    authors: 'Richardson & Wright',
    year: 1984,
    title: 'WGEN: a model for generating daily weather variables',
    where: 'USDA Agricultural Research Service, ARS-8',
  },
  'geng-1986': {
    authors: 'Geng, Penning de Vries & Supit',
    year: 1986,
    title: 'A simple method for generating daily rainfall data',
    where: 'Agricultural and Forest Meteorology 36:363-376',
  },
  'parton-logan-1981': {
    authors: 'Parton & Logan',
    year: 1981,
    title: 'A model for diurnal variation in soil and air temperature',
    where: 'Agricultural Meteorology 23:205-216',
  },
  'moody-1966': {
    authors: 'Moody',
    year: 1966,
    title: 'Nonlinear differential equation of drain spacing',
    where: 'Journal of the Irrigation and Drainage Division, ASCE 92(IR2):1-9',
  },
  'van-der-molen-wesseling-1991': {
    authors: 'van der Molen & Wesseling',
    year: 1991,
    title:
      "A solution in closed form and a series solution to replace the tables for the thickness of the equivalent layer in Hooghoudt's drain spacing formula",
    where: 'Agricultural Water Management 19:1-16',
  },
  'ritzema-1994': {
    authors: 'Ritzema (ed.)',
    year: 1994,
    title: 'Drainage principles and applications, chapter 8: subsurface flow to drains',
    where: 'ILRI Publication 16, Wageningen',
  },
  'usga-1993': {
    authors: 'United States Golf Association, Green Section',
    year: 1993,
    title: 'Recommendations for a method of putting green construction',
    where: 'USGA Green Section Record 31(2); revised 2004 and 2018',
  },
  'van-genuchten-1980': {
    authors: 'van Genuchten',
    year: 1980,
    title: 'A closed-form equation for predicting the hydraulic conductivity of unsaturated soils',
    where: 'Soil Science Society of America Journal 44:892-898',
  },
  'carsel-parrish-1988': {
    authors: 'Carsel & Parrish',
    year: 1988,
    title: 'Developing joint probability distributions of soil water retention characteristics',
    where: 'Water Resources Research 24:755-769',
  },
  'usda-tr-55-1986': {
    authors: 'USDA Soil Conservation Service',
    year: 1986,
    title: 'Urban hydrology for small watersheds',
    where: 'Technical Release 55, 2nd ed., Washington',
  },
  'chow-maidment-mays-1988': {
    authors: 'Chow, Maidment & Mays',
    year: 1988,
    title: 'Applied hydrology, sections 4.3 and 4.4',
    where: 'McGraw-Hill, New York',
  },
  'neitsch-2011': {
    authors: 'Neitsch, Arnold, Kiniry & Williams',
    year: 2011,
    title: 'Soil and Water Assessment Tool theoretical documentation, section 2:3.2 percolation',
    where: 'Texas Water Resources Institute Technical Report 406',
  },
  'energyplus-auxiliary-programs': {
    authors: 'US Department of Energy',
    year: null,
    title: 'Auxiliary programs: weather file format and the statistics of San Francisco airport TMY3',
    where: 'EnergyPlus documentation',
  },
  'illinois-state-climatologist-normals': {
    authors: 'Illinois State Climatologist, Illinois State Water Survey',
    year: null,
    title: 'Chicago O’Hare normals 1981-2010; Urbana normals printed with the 2018 summary',
    where: 'University of Illinois',
  },
  'noaa-normals-1981-2010': {
    authors: 'National Oceanic and Atmospheric Administration',
    year: 2011,
    title: 'Climate normals 1981-2010, New York Central Park (sunshine 1961-1990)',
    where: 'National Climatic Data Center; as reprinted in a general encyclopedia',
  },
});
