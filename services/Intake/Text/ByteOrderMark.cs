namespace LabPipeline.Intake.Text;

internal static class ByteOrderMark
{
    public static TextEncoding? Find(ReadOnlySpan<byte> start) => start switch
    {
        [0xEF, 0xBB, 0xBF, ..] => TextEncoding.Utf8,
        [0xFF, 0xFE, ..] => TextEncoding.Utf16LittleEndian,
        [0xFE, 0xFF, ..] => TextEncoding.Utf16BigEndian,
        _ => null,
    };

    public static int Length(TextEncoding encoding) => encoding == TextEncoding.Utf8 ? 3 : 2;
}
