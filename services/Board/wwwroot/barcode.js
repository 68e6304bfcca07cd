// The check of a sample barcode, ISO/IEC 7064 MOD 37,36: the same that the board makes, so that a mis-scan shows without a connection.

const alphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";
const modulus = 36;

export function isBarcode(text) {
    if (!/^[0-9A-Z]{4,24}$/.test(text) || /[IOQ]/.test(text.slice(0, -1))) {
        return false;
    }
    let product = modulus;
    for (const letter of text.slice(0, -1)) {
        const sum = (product + alphabet.indexOf(letter)) % modulus || modulus;
        product = sum * 2 % (modulus + 1);
    }
    return (product + alphabet.indexOf(text.at(-1))) % modulus === 1;
}
