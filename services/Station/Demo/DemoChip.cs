namespace LabPipeline.Station.Demo;

/// <summary>One chip: its Hunter colour and its defects.</summary>
internal sealed record DemoChip(int Tuber, int Slice, double L, double A, double B, int StemEnd, bool Greening, bool HollowHeart);
