// Photos on this device, by the identity of their entry: too large for the storage of texts.
function store(mode, work) {
  return new Promise((done, failed) => {
    const open = indexedDB.open("bench-photos", 1);
    open.onupgradeneeded = () => open.result.createObjectStore("photos");
    open.onerror = () => failed(open.error);
    open.onsuccess = () => {
      const request = work(open.result.transaction("photos", mode).objectStore("photos"));
      request.onsuccess = () => { open.result.close(); done(request.result); };
      request.onerror = () => { open.result.close(); failed(request.error); };
    };
  });
}

export const hold = (id, value) => store("readwrite", s => s.put(value, id));
export const held = id => store("readonly", s => s.get(id));
export const forget = id => store("readwrite", s => s.delete(id)).catch(() => {});
