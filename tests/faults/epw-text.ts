/** Three days of an invented EPW file: its eight head lines and an hour a line. */
export const epwText = (): string => {
  const lines = [
    'LOCATION,Invented Field,-,XXX,Invented,000000,41.98,-87.92,-6.0,201.0',
    'DESIGN CONDITIONS,0',
    'TYPICAL/EXTREME PERIODS,0',
    'GROUND TEMPERATURES,0',
    'HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0',
    'COMMENTS 1,invented for a test',
    'COMMENTS 2,',
    'DATA PERIODS,1,1,Data,Monday,6/1,6/3',
  ];
  for (let hour = 0; hour < 72; hour++) {
    const cells = new Array<string | number>(35).fill(0);
    const dry = Math.round(10 * (20 + 6 * Math.cos((2 * Math.PI * (hour - 14)) / 24))) / 10;
    cells.splice(0, 6, 2021, 6, 1 + Math.floor(hour / 24), (hour % 24) + 1, 60, '?9?9?9?9E0');
    cells.splice(6, 4, dry, dry - 6, 65, 99_000);
    cells[13] = hour % 24 > 5 && hour % 24 < 20 ? 400 : 0;
    cells[21] = 3.1;
    lines.push(cells.join(','));
  }
  return `${lines.join('\n')}\n`;
};
