typedef int hs_empty_model;
