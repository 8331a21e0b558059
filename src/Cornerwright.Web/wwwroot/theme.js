// Light, dark or as the system says; remembered in this browser only.
(() => {
  const key = "cornerwright-theme";
  const read = () => { try { return localStorage.getItem(key); } catch { return null; } };
  const apply = (theme) => {
    if (theme === "light" || theme === "dark") document.documentElement.dataset.theme = theme;
    else delete document.documentElement.dataset.theme;
  };
  apply(read());
  const isDark = () => {
    const chosen = document.documentElement.dataset.theme;
    return chosen ? chosen === "dark" : matchMedia("(prefers-color-scheme: dark)").matches;
  };
  window.cornerwright = {
    isDark,
    toggleTheme() {
      const next = isDark() ? "light" : "dark";
      try { localStorage.setItem(key, next); } catch { /* private window: for this page only */ }
      apply(next);
      return next === "dark";
    },
    // Brings a box that an address leads to into sight, with the cursor in it.
    show(id) {
      const box = document.getElementById(id);
      if (!box) return;
      for (let d = box.closest("details"); d; d = d.parentElement?.closest("details")) d.open = true;
      box.scrollIntoView({ block: box.matches("h2") ? "start" : "center" });
      box.focus({ preventScroll: true });
    },
    print() { window.print(); },
    openDialog(element) { if (element && !element.open) element.showModal(); },
    closeDialog(element) { if (element && element.open) element.close(); },
    // Ctrl+Z and Ctrl+Y outside of text fields belong to the workbench.
    listenForUndo(owner) {
      const onKey = (e) => {
        if (!(e.ctrlKey || e.metaKey) || e.altKey) return;
        const t = e.target;
        if (t instanceof HTMLElement && (t.isContentEditable || t.matches("textarea, input:not([type=range]):not([type=checkbox]):not([type=radio])"))) return;
        const k = e.key.toLowerCase();
        if (k === "z" && !e.shiftKey) { e.preventDefault(); owner.invokeMethodAsync("UndoFromKeyboard"); }
        else if (k === "y" || (k === "z" && e.shiftKey)) { e.preventDefault(); owner.invokeMethodAsync("RedoFromKeyboard"); }
      };
      document.addEventListener("keydown", onKey);
      return { stop() { document.removeEventListener("keydown", onKey); } };
    },
    warnUnsaved(unsaved) { window.onbeforeunload = unsaved ? (e) => { e.preventDefault(); return ""; } : null; },
  };
})();
