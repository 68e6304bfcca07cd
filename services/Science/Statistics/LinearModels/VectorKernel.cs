using System.Numerics;

namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>The two inner loops every factorisation here spends its time in.</summary>
internal static class VectorKernel
{
    public static double Dot(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        var lanes = Vector<double>.Zero;
        var width = Vector<double>.Count;
        var position = 0;
        for (; position <= left.Length - width; position += width)
        {
            lanes += new Vector<double>(left.Slice(position, width)) * new Vector<double>(right.Slice(position, width));
        }

        var sum = Vector.Sum(lanes);
        for (; position < left.Length; position++)
        {
            sum += left[position] * right[position];
        }

        return sum;
    }

    /// <summary>target += factor * source.</summary>
    public static void AddScaled(Span<double> target, double factor, ReadOnlySpan<double> source)
    {
        var width = Vector<double>.Count;
        var lanes = new Vector<double>(factor);
        var position = 0;
        for (; position <= source.Length - width; position += width)
        {
            var slot = target.Slice(position, width);
            (new Vector<double>(slot) + (lanes * new Vector<double>(source.Slice(position, width)))).CopyTo(slot);
        }

        for (; position < source.Length; position++)
        {
            target[position] += factor * source[position];
        }
    }
}
