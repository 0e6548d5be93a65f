"""Unit names for type hints: they cost nothing at run time and are proved by a test.

Inside the house every number is in mm, N, MPa, N·mm, rad, s or kg; only the road, its speeds
and the heat it leaves in a brake are in m, m/s and J. A hint such as `d: mm`
says so to the reader, to the working sheet and to the dimension test, which calls every
formula with real quantities. Texts with other units exist only at the edge
(`core.quantity`).
"""

from typing import Annotated, TypeAlias

import numpy as np
from numpy.typing import NDArray

Array: TypeAlias = NDArray[np.float64]

#: One number, or one number for each variant of a batch (variants on the last axis).
Num: TypeAlias = float | Array

#: A yes or no, or one for each variant.
Truth: TypeAlias = bool | np.bool_ | NDArray[np.bool_]

mm: TypeAlias = Annotated[Num, "mm"]
mm2: TypeAlias = Annotated[Num, "mm2"]
mm3: TypeAlias = Annotated[Num, "mm3"]
mm4: TypeAlias = Annotated[Num, "mm4"]
N: TypeAlias = Annotated[Num, "N"]
MPa: TypeAlias = Annotated[Num, "MPa"]
Nmm: TypeAlias = Annotated[Num, "N*mm"]
rad: TypeAlias = Annotated[Num, "rad"]
kg: TypeAlias = Annotated[Num, "kg"]
s: TypeAlias = Annotated[Num, "s"]
m_s2: TypeAlias = Annotated[Num, "m/s2"]
N_mm: TypeAlias = Annotated[Num, "N/mm"]
mm_N: TypeAlias = Annotated[Num, "mm/N"]
Nmm_rad: TypeAlias = Annotated[Num, "N*mm/rad"]
mm3_MPa: TypeAlias = Annotated[Num, "mm3/MPa"]
mm2_MPa: TypeAlias = Annotated[Num, "mm2/MPa"]
mm3_s: TypeAlias = Annotated[Num, "mm3/s"]
MPa_s: TypeAlias = Annotated[Num, "MPa*s"]
kg_mm3: TypeAlias = Annotated[Num, "kg/mm3"]
Ratio: TypeAlias = Annotated[Num, "1"]

m: TypeAlias = Annotated[Num, "m"]
m_s: TypeAlias = Annotated[Num, "m/s"]
km_h: TypeAlias = Annotated[Num, "km/h"]
J: TypeAlias = Annotated[Num, "J"]
W: TypeAlias = Annotated[Num, "W"]
K: TypeAlias = Annotated[Num, "K"]
per_K: TypeAlias = Annotated[Num, "1/K"]
J_kgK: TypeAlias = Annotated[Num, "J/kg/K"]
