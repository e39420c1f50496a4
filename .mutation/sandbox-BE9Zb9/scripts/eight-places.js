/** One invented garden in eight places of the world, planted on days that are usual there. */
// @ts-nocheck


/**
 * `out` is the day on which growers there plant out tender crops, `early` the day for cool ones, and
 * `glass` that for tomatoes in an unheated glasshouse: common practice, no source.
 */
export const eightPlaces = [
  {
    name: "Dublin",
    timezone: "Europe/Dublin",
    location: { latitude: 53.35, longitude: -6.26, elevation: "20 m" },
    season: { from: "2027-03-01", to: "2027-10-31" },
    ...{ early: "2027-03-20", glass: "2027-04-20", out: "2027-05-25" },
  },
  {
    name: "Oslo",
    timezone: "Europe/Oslo",
    location: { latitude: 59.91, longitude: 10.75, elevation: "90 m" },
    season: { from: "2027-04-01", to: "2027-10-15" },
    ...{ early: "2027-05-05", glass: "2027-05-05", out: "2027-06-05" },
  },
  {
    name: "Berlin",
    timezone: "Europe/Berlin",
    location: { latitude: 52.52, longitude: 13.4, elevation: "40 m" },
    season: { from: "2027-03-01", to: "2027-10-31" },
    ...{ early: "2027-04-05", glass: "2027-04-15", out: "2027-05-16" },
  },
  {
    name: "Rome",
    timezone: "Europe/Rome",
    location: { latitude: 41.9, longitude: 12.5, elevation: "40 m" },
    season: { from: "2027-02-01", to: "2027-11-15" },
    ...{ early: "2027-02-20", glass: "2027-03-15", out: "2027-04-20" },
  },
  {
    name: "Des Moines",
    timezone: "America/Chicago",
    location: { latitude: 41.59, longitude: -93.62, elevation: "880 ft" },
    season: { from: "2027-03-15", to: "2027-10-31" },
    amounts: "us",
    ...{ early: "2027-04-05", glass: "2027-04-10", out: "2027-05-12" },
  },
  {
    name: "Phoenix",
    timezone: "America/Phoenix",
    location: { latitude: 33.45, longitude: -112.07, elevation: "1080 ft" },
    season: { from: "2027-01-15", to: "2027-12-15" },
    amounts: "us",
    ...{ early: "2027-01-25", glass: "2027-02-01", out: "2027-03-05" },
  },
  {
    name: "Nairobi",
    timezone: "Africa/Nairobi",
    location: { latitude: -1.29, longitude: 36.82, elevation: "1660 m" },
    season: { from: "2027-03-01", to: "2028-02-28" },
    ...{ early: "2027-03-20", glass: "2027-03-20", out: "2027-03-25" },
  },
  {
    name: "Christchurch",
    timezone: "Pacific/Auckland",
    location: { latitude: -43.53, longitude: 172.63, elevation: "10 m" },
    season: { from: "2027-08-01", to: "2028-05-15" },
    ...{ early: "2027-08-25", glass: "2027-09-20", out: "2027-10-25" },
  },
];

/** Tender crops are planted out on one day, so that their flowers can be compared. */
export function gardenIn({ name, early, glass, out, ...place }) {
  const water = "6 L";
  const plantedOut = (id, crop, more = {}) => ({ id, crop, transplanted: out, water, ...more });
  return {
    version: 1,
    garden: name,
    ...place,
    feeding: { days: ["wed", "sat"] },
    beds: [
      {
        id: "warm",
        plantings: [
          plantedOut("cordon", "tomato"),
          plantedOut("bush", "tomato", { habit: "bush" }),
          plantedOut("pepper", "sweet pepper"),
          plantedOut("chili", "chili"),
          plantedOut("eggplant", "eggplant"),
          plantedOut("courgette", "courgette"),
          plantedOut("cucumber", "cucumber"),
          plantedOut("cantaloupe", "cantaloupe"),
          { id: "bean", crop: "green bean", sown: out, water },
        ],
      },
      {
        id: "cool",
        plantings: [
          { id: "cabbage", crop: "cabbage", transplanted: early, water },
          { id: "potato", crop: "potato", sown: early, water },
          { id: "onion", crop: "onion", sown: early, water },
          { id: "pea", crop: "pea", sown: early, water },
        ],
      },
      {
        id: "glass",
        cover: "glass",
        plantings: [{ id: "glass", crop: "tomato", transplanted: glass, water }],
      },
      { id: "orchard", plantings: [{ id: "apple", crop: "apple", established: true, water }] },
    ],
  };
}
