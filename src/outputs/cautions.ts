/**
 * Cautions of making and keeping stock; those of feeding come with the calendar. Raw shell and
 * salmonella, acid in eyes, carbon dioxide in closed vessels: the usual cautions of a kitchen.
 */
export const makingCautions: readonly string[] = [
  "Boil shells for 10 minutes before you dry them: boiling water scalds. Wash hands, sink and boards. Raw shell can carry salmonella.",
  "Wear a mask when you crush shells, and glasses when you add acid. Rinse splashes with plenty of water.",
  "The mix foams and gives off carbon dioxide: use an open vessel of several times its volume, in an airy room. Never close it while it fizzes: it would burst.",
];

export const keepingCautions: readonly string[] = [
  "Label every bottle. Keep it away from food, children and animals. It is not for drinking.",
  "Throw stock away when it is past its use-by day, mouldy, smells or gasses again.",
];

export const humilityCautions: readonly string[] = [
  "Feeding is no cure where watering is uneven or the soil already holds enough calcium: water evenly first.",
  "Your local rules, your certifier and a soil test come before this plan.",
];

/** On every label. */
export const labelCaution = "Not for drinking. Keep away from food and children.";
