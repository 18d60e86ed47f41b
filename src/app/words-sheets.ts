/** The sheets of words and physics, fetched when they are first opened: they stay out of the first load. */
import '../ui/glossary-sheet.ts';
import '../ui/physics-sheet.ts';
