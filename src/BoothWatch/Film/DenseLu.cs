namespace BoothWatch.Film;

/// <summary>LU factors of a small dense matrix with partial pivoting; no allocation after construction.</summary>
internal sealed class DenseLu(int size)
{
    private readonly int[] _pivot = new int[size];
    private double[] _factors = [];

    /// <summary>Factors a matrix stored row by row, in place; the array is kept.</summary>
    public void Factor(double[] matrix)
    {
        _factors = matrix;
        for (int k = 0; k < size; k++)
        {
            int best = k;
            double largest = Math.Abs(matrix[(k * size) + k]);
            for (int i = k + 1; i < size; i++)
            {
                double candidate = Math.Abs(matrix[(i * size) + k]);
                if (candidate > largest)
                {
                    (best, largest) = (i, candidate);
                }
            }

            _pivot[k] = best;
            if (best != k)
            {
                for (int j = 0; j < size; j++)
                {
                    (matrix[(k * size) + j], matrix[(best * size) + j]) = (matrix[(best * size) + j], matrix[(k * size) + j]);
                }
            }

            double inverse = 1 / matrix[(k * size) + k];
            for (int i = k + 1; i < size; i++)
            {
                double factor = matrix[(i * size) + k] * inverse;
                matrix[(i * size) + k] = factor;
                if (factor == 0)
                {
                    continue;
                }

                for (int j = k + 1; j < size; j++)
                {
                    matrix[(i * size) + j] -= factor * matrix[(k * size) + j];
                }
            }
        }
    }

    /// <summary>Solves for the first entries of <paramref name="vector"/>, in place.</summary>
    public void Solve(double[] vector)
    {
        for (int k = 0; k < size; k++)
        {
            int pivot = _pivot[k];
            if (pivot != k)
            {
                (vector[k], vector[pivot]) = (vector[pivot], vector[k]);
            }
        }

        for (int i = 1; i < size; i++)
        {
            double sum = vector[i];
            for (int j = 0; j < i; j++)
            {
                sum -= _factors[(i * size) + j] * vector[j];
            }

            vector[i] = sum;
        }

        for (int i = size - 1; i >= 0; i--)
        {
            double sum = vector[i];
            for (int j = i + 1; j < size; j++)
            {
                sum -= _factors[(i * size) + j] * vector[j];
            }

            vector[i] = sum / _factors[(i * size) + i];
        }
    }
}
