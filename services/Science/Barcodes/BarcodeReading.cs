namespace LabPipeline.Science.Barcodes;

/// <summary>What became of a scanned or typed text: a barcode, or the reason there is none.</summary>
/// <param name="Barcode">The barcode, or null when refused.</param>
/// <param name="Refusal">The reason, <see cref="BarcodeRefusal.None"/> when there is a barcode.</param>
/// <param name="Explanation">One sentence for the person at the bench; empty when there is a barcode.</param>
public sealed record BarcodeReading(SampleBarcode? Barcode, BarcodeRefusal Refusal, string Explanation);
