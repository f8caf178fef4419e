// Two types that break the rule on purpose, so that the test can show that it fires.

namespace BoothWatch.Tests.Architecture.Specimen.Film
{
    internal sealed class SomethingOfTheFilm;
}

namespace BoothWatch.Tests.Architecture.Specimen.Air
{
    internal sealed class AirThatKnowsTheFilm
    {
        public Film.SomethingOfTheFilm? Film { get; init; }
    }
}
