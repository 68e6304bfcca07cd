using System.Numerics;
using System.Runtime.CompilerServices;

namespace LabPipeline.Science.Statistics.LinearModels;

/// <summary>
/// The inner loops every factorisation here spends its time in. They are compiled optimised at once: a report runs a few
/// analyses and ends, and unoptimised vector code is twenty times slower than what replaces it later.
/// </summary>
internal static class VectorKernel
{
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
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
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
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

    /// <summary>target += sum of weights[i] * row i of the source, four rows a pass so that the target is loaded and stored once for four.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void AddCombination(Span<double> target, ReadOnlySpan<double> weights, ReadOnlySpan<double> source)
    {
        var columns = target.Length;
        var width = Vector<double>.Count;
        var row = 0;
        for (; row <= weights.Length - 4; row += 4)
        {
            var (w0, w1, w2, w3) = (weights[row], weights[row + 1], weights[row + 2], weights[row + 3]);
            if (w0 == 0 && w1 == 0 && w2 == 0 && w3 == 0)
            {
                continue;
            }

            var s0 = source.Slice(row * columns, columns);
            var s1 = source.Slice((row + 1) * columns, columns);
            var s2 = source.Slice((row + 2) * columns, columns);
            var s3 = source.Slice((row + 3) * columns, columns);
            var position = 0;
            for (; position <= columns - width; position += width)
            {
                var slot = target.Slice(position, width);
                var first = (new Vector<double>(s0.Slice(position, width)) * w0) + (new Vector<double>(s1.Slice(position, width)) * w1);
                var second = (new Vector<double>(s2.Slice(position, width)) * w2) + (new Vector<double>(s3.Slice(position, width)) * w3);
                (new Vector<double>(slot) + first + second).CopyTo(slot);
            }

            for (; position < columns; position++)
            {
                target[position] += (s0[position] * w0) + (s1[position] * w1) + (s2[position] * w2) + (s3[position] * w3);
            }
        }

        for (; row < weights.Length; row++)
        {
            AddScaled(target, weights[row], source.Slice(row * columns, columns));
        }
    }
}
