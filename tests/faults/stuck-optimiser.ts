/** An optimiser's thread that looks neither at its time nor at its flag. */
for (;;);
