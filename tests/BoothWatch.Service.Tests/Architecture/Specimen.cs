// Two outputs of which one knows the other, so that the test can show that the rule fires.

namespace BoothWatch.Service.Tests.Architecture.Specimen.Outputs.Bell
{
    internal sealed class Bell;
}

namespace BoothWatch.Service.Tests.Architecture.Specimen.Outputs.Lamp
{
    internal sealed class LampThatKnowsTheBell
    {
        public Bell.Bell? Bell { get; init; }
    }
}
