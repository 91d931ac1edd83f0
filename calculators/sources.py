"""The one bibliography. Every number of the guide cites a key of it.

Keys follow the issuing body's own numbers where it has them. ``kind`` tells a
standard or paper from a rule of the trade ("common practice", which has no
source) and from a value written down from memory.
"""

from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Source:
    """One entry: who issued it, when, what it is called, where it stands."""

    author: str
    title: str
    year: str
    publisher: str
    kind: str = "publication"  # publication, library, practice, memory
    doi: str = ""


BIBLIOGRAPHY = {
    # Units and constants
    "BIPM-SI-9": Source(
        author="BIPM",
        title="The International System of Units (SI Brochure), 9th edition",
        year="2019",
        publisher="Bureau International des Poids et Mesures",
    ),
    "NIST-SP811": Source(
        author="A. Thompson and B. N. Taylor",
        title="Guide for the Use of the International System of Units (SI), NIST SP 811",
        year="2008",
        publisher="National Institute of Standards and Technology",
    ),
    # Water and air
    "IAPWS-R14-08": Source(
        author="IAPWS; W. Wagner, T. Riethmann, R. Feistel and A. H. Harvey",
        title=(
            "Revised Release on the Pressure along the Melting and Sublimation Curves of "
            "Ordinary Water Substance, R14-08(2011); J. Phys. Chem. Ref. Data 40, 043103"
        ),
        year="2011",
        publisher="International Association for the Properties of Water and Steam",
        doi="10.1063/1.3657937",
    ),
    "IAPWS-SR1-86": Source(
        author="IAPWS; W. Wagner and A. Pruss",
        title=(
            "Revised Supplementary Release on Saturation Properties of Ordinary Water "
            "Substance, SR1-86(1992); J. Phys. Chem. Ref. Data 22, 783"
        ),
        year="1992",
        publisher="International Association for the Properties of Water and Steam",
        doi="10.1063/1.555926",
    ),
    "IAPWS-R6-95": Source(
        author="IAPWS",
        title="Thermodynamic Properties of Ordinary Water Substance, R6-95(2018)",
        year="2018",
        publisher="International Association for the Properties of Water and Steam",
    ),
    "USSA-1976": Source(
        author="NOAA, NASA and USAF",
        title="U.S. Standard Atmosphere, 1976",
        year="1976",
        publisher="U.S. Government Printing Office",
    ),
    # Rules and rates
    "40-CFR-1065": Source(
        author="U.S. Environmental Protection Agency",
        title="40 CFR 1065.644, Vacuum-decay leak rate",
        year="2014",
        publisher="Code of Federal Regulations",
    ),
    "40-CFR-82": Source(
        author="U.S. Environmental Protection Agency",
        title="40 CFR Part 82 Subpart F, Recycling and Emissions Reduction",
        year="2016",
        publisher="Code of Federal Regulations",
    ),
    # Inside volume, gauges, pumps, leaks
    "ASTM-B280": Source(
        author="ASTM International",
        title=(
            "Standard Specification for Seamless Copper Tube for Air Conditioning and "
            "Refrigeration Field Service, B280-20"
        ),
        year="2020",
        publisher="ASTM International",
    ),
    "ISO-13528": Source(
        author="ISO",
        title="Statistical methods for use in proficiency testing by interlaboratory comparison",
        year="2022",
        publisher="International Organization for Standardization",
    ),
    "ISO-IEC-17043": Source(
        author="ISO and IEC",
        title="Conformity assessment: General requirements for proficiency testing providers",
        year="2023",
        publisher="International Organization for Standardization",
    ),
    "ISO-21360-1": Source(
        author="ISO",
        title=(
            "Vacuum technology: Standard methods for measuring vacuum-pump performance, "
            "part 1: General description"
        ),
        year="2020",
        publisher="International Organization for Standardization",
    ),
    "IAPWS-R10-06": Source(
        author="IAPWS",
        title="Equation of State 2006 for H2O Ice Ih, R10-06(2009)",
        year="2009",
        publisher="International Association for the Properties of Water and Steam",
    ),
    "CROWL-LOUVAR": Source(
        author="D. A. Crowl and J. F. Louvar",
        title="Chemical Process Safety: Fundamentals with Applications",
        year="2011",
        publisher="Prentice Hall",
    ),
    "DUSHMAN-1962": Source(
        author="S. Dushman; J. M. Lafferty (editor)",
        title="Scientific Foundations of Vacuum Technique, 2nd edition",
        year="1962",
        publisher="John Wiley & Sons",
    ),
    "COOLPROP": Source(
        author="I. H. Bell, J. Wronski, S. Quoilin and V. Lemort",
        title="CoolProp 8.0.0, an open library of fluid properties; Ind. Eng. Chem. Res. 53, 2498",
        year="2014",
        publisher="coolprop.org",
        kind="library",
        doi="10.1021/ie4033999",
    ),
    # Flow of thin gases
    "SHARIPOV-SELEZNEV-1998": Source(
        author="F. Sharipov and V. Seleznev",
        title="Data on Internal Rarefied Gas Flows; J. Phys. Chem. Ref. Data 27, 657",
        year="1998",
        publisher="American Institute of Physics",
        doi="10.1063/1.556019",
    ),
    "KNUDSEN-1909": Source(
        author="M. Knudsen",
        title=(
            "Die Gesetze der Molekularströmung und der inneren Reibungsströmung der Gase durch "
            "Röhren; Ann. Phys. 333, 75"
        ),
        year="1909",
        publisher="Annalen der Physik",
        doi="10.1002/andp.19093330106",
    ),
    "CLAUSING-1932": Source(
        author="P. Clausing",
        title=(
            "Über die Strömung sehr verdünnter Gase durch Röhren von beliebiger Länge; "
            "Ann. Phys. 404, 961"
        ),
        year="1932",
        publisher="Annalen der Physik",
        doi="10.1002/andp.19324040804",
    ),
    "COLE-1977": Source(
        author="R. J. Cole",
        title=(
            "Transmission Probability of Free Molecular Flow through a Tube; "
            "Prog. Astronaut. Aeronaut. 51, 261"
        ),
        year="1977",
        publisher="AIAA",
    ),
    "SANTELER-1986": Source(
        author="D. J. Santeler",
        title="New concepts in molecular gas flow; J. Vac. Sci. Technol. A 4, 338",
        year="1986",
        publisher="American Vacuum Society",
        doi="10.1116/1.573923",
    ),
    "SAMPSON-1891": Source(
        author="R. A. Sampson",
        title="On Stokes's Current Function; Phil. Trans. R. Soc. A 182, 449",
        year="1891",
        publisher="Royal Society",
        doi="10.1098/rsta.1891.0012",
    ),
    "DAGAN-1982": Source(
        author="Z. Dagan, S. Weinbaum and R. Pfeffer",
        title=(
            "An infinite-series solution for the creeping motion through an orifice of finite "
            "length; J. Fluid Mech. 115, 505"
        ),
        year="1982",
        publisher="Cambridge University Press",
        doi="10.1017/S0022112082000883",
    ),
    "FUJIMOTO-USAMI-1984": Source(
        author="T. Fujimoto and M. Usami",
        title=(
            "Rarefied Gas Flow Through a Circular Orifice and Short Tubes; J. Fluids Eng. 106, 367"
        ),
        year="1984",
        publisher="ASME",
        doi="10.1115/1.3243132",
    ),
    "BLASIUS-1913": Source(
        author="H. Blasius",
        title="Das Ähnlichkeitsgesetz bei Reibungsvorgängen in Flüssigkeiten",
        year="1913",
        publisher="VDI, Forschungsarbeiten 131",
    ),
    "SHAPIRO-1953": Source(
        author="A. H. Shapiro",
        title="The Dynamics and Thermodynamics of Compressible Fluid Flow",
        year="1953",
        publisher="Ronald Press",
    ),
    "IAPWS-R12-08": Source(
        author="IAPWS",
        title="Formulation 2008 for the Viscosity of Ordinary Water Substance, R12-08",
        year="2008",
        publisher="International Association for the Properties of Water and Steam",
    ),
    "THERMO": Source(
        author="C. Bell and contributors",
        title="thermo 0.6.1 and chemicals 1.5.2, open libraries of chemical properties",
        year="2025",
        publisher="github.com/CalebBell/thermo",
        kind="library",
    ),
    "GUM": Source(
        author="JCGM",
        title="Evaluation of measurement data: Guide to the expression of uncertainty, JCGM 100",
        year="2008",
        publisher="Joint Committee for Guides in Metrology",
    ),
    "SHAMPINE-REICHELT-1997": Source(
        author="L. F. Shampine and M. W. Reichelt",
        title="The MATLAB ODE Suite; SIAM J. Sci. Comput. 18, 1",
        year="1997",
        publisher="Society for Industrial and Applied Mathematics",
        doi="10.1137/S1064827594276424",
    ),
    "HERTZ-KNUDSEN": Source(
        author="H. Hertz; M. Knudsen",
        title=(
            "On the evaporation of liquids in a vacuum, Ann. Phys. 253, 177 (1882); The maximum "
            "rate of evaporation of mercury, Ann. Phys. 352, 697 (1915); as textbooks give it"
        ),
        year="1915",
        publisher="Annalen der Physik",
    ),
    # Fits and their doubts
    "GOLUB-PEREYRA-1973": Source(
        author="G. H. Golub and V. Pereyra",
        title=(
            "The differentiation of pseudo-inverses and nonlinear least squares problems whose "
            "variables separate; SIAM J. Numer. Anal. 10, 413"
        ),
        year="1973",
        publisher="Society for Industrial and Applied Mathematics",
        doi="10.1137/0710036",
    ),
    "VERMEULEN-1953": Source(
        author="T. Vermeulen",
        title=(
            "Theory for irreversible and constant-pattern solid diffusion; Ind. Eng. Chem. 45, 1664"
        ),
        year="1953",
        publisher="American Chemical Society",
        doi="10.1021/ie50524a025",
    ),
    "BURNHAM-ANDERSON-2002": Source(
        author="K. P. Burnham and D. R. Anderson",
        title="Model Selection and Multimodel Inference, 2nd edition",
        year="2002",
        publisher="Springer",
    ),
    "PAWITAN-2001": Source(
        author="Y. Pawitan",
        title="In All Likelihood: Statistical Modelling and Inference Using Likelihood",
        year="2001",
        publisher="Oxford University Press",
    ),
    "SOKAL-1997": Source(
        author="A. Sokal",
        title="Monte Carlo methods in statistical mechanics: foundations and new algorithms",
        year="1997",
        publisher="in Functional Integration, Plenum Press",
    ),
    "ABRAMOWITZ-STEGUN": Source(
        author="M. Abramowitz and I. A. Stegun (editors)",
        title="Handbook of Mathematical Functions, Applied Mathematics Series 55",
        year="1964",
        publisher="National Bureau of Standards",
    ),
    "PHYSICS": Source(
        author="Dry & Tight",
        title="Derived here from the ideal-gas law and conservation of mass; working shown",
        year="2026",
        publisher="this guide",
        kind="derivation",
    ),
    "COMMON-PRACTICE": Source(
        author="The trade",
        title="Common practice: a rule of thumb in general use, with no single source",
        year="",
        publisher="",
        kind="practice",
    ),
    "FROM-MEMORY": Source(
        author="Dry & Tight",
        title="Written down from memory of the literature; the text was not laid beside it",
        year="2026",
        publisher="this guide",
        kind="memory",
    ),
}
