namespace LabPipeline.Science.Barcodes;

/// <summary>The code sets of Code 128.</summary>
public enum Code128Set
{
    /// <summary>Control characters, upper case, digits and punctuation (ASCII 0-95).</summary>
    A = 'A',

    /// <summary>Upper and lower case, digits and punctuation (ASCII 32-127).</summary>
    B = 'B',

    /// <summary>Pairs of digits.</summary>
    C = 'C',
}
