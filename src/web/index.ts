// The app has no door for other layers: it starts in main.tsx.

export {};
