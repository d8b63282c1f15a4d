// A photo as it is sent: large ones made smaller on this device, and none with the place and the camera in it.
const LONGEST_SIDE = 2048, QUALITY = 0.85, SMALL = 400000; // px, share, bytes

// Gives the file itself where it is small and carries nothing, or where the browser cannot read it.
export async function shrunk(file) {
  try {
    const picture = await createImageBitmap(file);
    const scale = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
    if (scale === 1 && file.size <= SMALL && file.type === "image/png") return file;
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(picture.width * scale);
    canvas.height = Math.round(picture.height * scale);
    canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
    picture.close();
    const made = await new Promise(done => canvas.toBlob(done, "image/jpeg", QUALITY));
    return made || file;
  } catch { return file; }
}
